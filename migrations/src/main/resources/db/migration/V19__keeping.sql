-- Keeping what was published: is it still what it was, what may go and when, how long is there room.
create table stook.fixity (
  run_id     bigint primary key references stook.publication,
  due_at     timestamptz not null default now(),
  checked_at timestamptz,
  outcome    text check (outcome in ('GOOD', 'DAMAGED')),
  damaged    jsonb not null default '[]' check (jsonb_typeof(damaged) = 'array'),
  check ((checked_at is null) = (outcome is null))
);
comment on table stook.fixity is 'When the files of a publication are next held against their hashes, and what was found last: [{"file", "found", "expected"}].';
create index fixity_due on stook.fixity (due_at);
create index fixity_damaged on stook.fixity (run_id) where outcome = 'DAMAGED';
insert into stook.fixity (run_id) select run_id from stook.publication;

create function stook.plan_fixity() returns trigger language plpgsql as $$
begin
  insert into stook.fixity (run_id) values (new.run_id);
  return null;
end $$;
create trigger plan_fixity after insert on stook.publication for each row execute function stook.plan_fixity();

create function stook.audit_fixity() returns trigger language plpgsql as $$
begin
  perform stook.write_audit('publication.' || new.outcome, 'publication/' || new.run_id, jsonb_build_object('files', new.damaged));
  return null;
end $$;
create trigger audit_outcome after update on stook.fixity for each row
  when (new.outcome is not null and new.outcome is distinct from old.outcome
    and (new.outcome <> 'GOOD' or old.outcome is not null)) execute function stook.audit_fixity();

create table stook.retention_policy (
  station_id      bigint not null references stook.station,
  version         int not null check (version > 0),
  superseded_days int check (superseded_days >= 0),
  grace_days      int not null check (grace_days >= 1),
  note            text,
  created_by      text not null,
  created_at      timestamptz not null default now(),
  primary key (station_id, version)
);
comment on table stook.retention_policy is 'What of a station may be removed: the newest version counts. No row, or superseded_days null: nothing, ever.';
comment on column stook.retention_policy.superseded_days is 'A publication may go this long after a later one took its place. One that stands is never removed, nor is a frame.';
comment on column stook.retention_policy.grace_days is 'How long a removal is announced before it is done, and can be called off.';
create trigger append_only before update or delete on stook.retention_policy for each row execute function stook.refuse_change();
create trigger append_only_truncate before truncate on stook.retention_policy for each statement execute function stook.refuse_change();

create function stook.audit_policy() returns trigger language plpgsql as $$
begin
  perform stook.write_audit('station.RETENTION-' || new.version, 'station/' || new.station_id,
    jsonb_build_object('supersededDays', new.superseded_days, 'graceDays', new.grace_days, 'note', new.note));
  return null;
end $$;
create trigger audit_version after insert on stook.retention_policy for each row execute function stook.audit_policy();

create table stook.removal (
  run_id         bigint primary key references stook.publication,
  policy_version int not null,
  state          text not null default 'ANNOUNCED' check (state in ('ANNOUNCED', 'KEPT', 'REMOVED')),
  announced_at   timestamptz not null default now(),
  due_at         timestamptz not null,
  changed_at     timestamptz not null default now()
);
comment on table stook.removal is 'Publications whose files are to be removed, were kept by a person, or are removed. Their rows and audit entries stay.';
create index removal_due on stook.removal (due_at) where state = 'ANNOUNCED';

create function stook.guard_removal() returns trigger language plpgsql as $$
begin
  if tg_op = 'INSERT' then
    if new.state <> 'ANNOUNCED' or new.due_at < now() + interval '1 day' - interval '1 minute' then
      raise exception 'a removal is announced at least a day ahead' using errcode = 'check_violation';
    end if;
  elsif old.state <> 'ANNOUNCED' or (new.state = 'REMOVED' and now() < old.due_at) or new.due_at <> old.due_at then
    raise exception 'removal of publication %: may not go from % to %', new.run_id, old.state, new.state
      using errcode = 'check_violation';
  end if;
  new.changed_at := now();
  return new;
end $$;
create trigger guard_state before insert or update on stook.removal for each row execute function stook.guard_removal();

create function stook.audit_removal() returns trigger language plpgsql as $$
begin
  perform stook.write_audit('publication.REMOVAL-' || new.state, 'publication/' || new.run_id,
    jsonb_build_object('policy', new.policy_version, 'due', new.due_at));
  return null;
end $$;
create trigger audit_state after insert or update on stook.removal for each row execute function stook.audit_removal();

create table stook.share_room (
  share_id    bigint not null references stook.share,
  at          timestamptz not null default now(),
  free_bytes  bigint not null,
  total_bytes bigint not null,
  primary key (share_id, at)
);
comment on table stook.share_room is 'Room on a share, now and then: what the forecast goes by.';
