-- The trail of who did what. Written in the transaction of the act itself, never changed afterwards.
create table stook.audit_entry (
  id      bigint generated always as identity primary key,
  xid     xid8 not null default pg_current_xact_id(),
  at      timestamptz not null default clock_timestamp(),
  actor   text not null,
  kind    text not null,
  subject text not null,
  body    jsonb not null default '{}'
);
comment on table stook.audit_entry is 'Append-only. kind such as run.READY-RUNNING; subject such as run/17.';
comment on column stook.audit_entry.xid is 'Lets the sealer wait until no older transaction can still add an entry.';
create index audit_entry_by_subject on stook.audit_entry (subject, id);

create table stook.audit_seal (
  tree_size bigint primary key,
  root      stook.sha256 not null,
  prev_root stook.sha256,
  sealed_at timestamptz not null default now(),
  token     bytea
);
comment on table stook.audit_seal is 'Merkle tree heads over the entries (RFC 9162 hashing); token: a time stamp of the root (RFC 3161), if one was got.';

create function stook.refuse_change() returns trigger language plpgsql as $$
begin
  raise exception '% of %.% refused: its rows are never changed', tg_op, tg_table_schema, tg_table_name
    using errcode = 'restrict_violation';
end $$;
comment on function stook.refuse_change is 'For tables that only grow.';

do $$
declare grown text;
begin
  foreach grown in array array['audit_entry', 'audit_seal', 'publication', 'tone_settings', 'tone_settings_version'] loop
    execute format('create trigger append_only before update or delete on stook.%I for each row execute function stook.refuse_change()', grown);
    execute format('create trigger append_only_truncate before truncate on stook.%I for each statement execute function stook.refuse_change()', grown);
  end loop;
end $$;

create function stook.actor() returns text language sql stable as $$
  select coalesce(nullif(current_setting('stook.actor', true), ''), 'database:' || session_user)
$$;
comment on function stook.actor is 'Who acts: set_config(''stook.actor'', name, true) in this transaction, else the database role.';

create function stook.write_audit(kind text, subject text, body jsonb default '{}') returns bigint language sql as $$
  insert into stook.audit_entry (actor, kind, subject, body) values (stook.actor(), kind, subject, body) returning id
$$;
comment on function stook.write_audit is 'For acts that are no transition: an order of an operator, a sign-in, an export.';
