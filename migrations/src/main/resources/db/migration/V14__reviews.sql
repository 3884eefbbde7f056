-- What people made of composites.
create table stook.review (
  id      bigint generated always as identity primary key,
  run_id  bigint not null references stook.run,
  verdict text not null check (verdict in ('ACCEPTED', 'SENT_BACK')),
  reason  text,
  actor   text not null default stook.actor(),
  at      timestamptz not null default now(),
  check (verdict <> 'SENT_BACK' or reason is not null)
);
comment on table stook.review is 'A person accepted a composite or sent it back. The newest of a run counts; the others stay.';
create index review_by_run on stook.review (run_id, id desc);
create trigger append_only before update or delete on stook.review for each row execute function stook.refuse_change();
create trigger append_only_truncate before truncate on stook.review for each statement execute function stook.refuse_change();

create function stook.audit_review() returns trigger language plpgsql as $$
begin
  perform stook.write_audit('run.' || replace(new.verdict, '_', '-'), 'run/' || new.run_id,
    jsonb_strip_nulls(jsonb_build_object('reason', new.reason,
      'sha256', (select p.sha256 from stook.publication p where p.run_id = new.run_id))));
  return null;
end $$;
create trigger audit_new after insert on stook.review for each row execute function stook.audit_review();
