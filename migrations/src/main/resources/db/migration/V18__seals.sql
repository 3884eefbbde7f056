-- Sealing of the audit trail: every entry becomes a leaf of one growing hash tree (RFC 9162), whose heads are kept elsewhere too.
create table stook.audit_open (
  entry_id bigint primary key
);
comment on table stook.audit_open is 'Entries that are no leaf yet. Where a transaction stayed open for long its entries come later than their numbers say; none is passed over.';
insert into stook.audit_open select id from stook.audit_entry;

create function stook.open_entries() returns trigger language plpgsql as $$
begin
  insert into stook.audit_open select id from added;
  return null;
end $$;
create trigger open_entries after insert on stook.audit_entry
  referencing new table as added for each statement execute function stook.open_entries();

create table stook.audit_leaf (
  position bigint primary key check (position >= 0),
  entry_id bigint not null unique,
  hash     bytea not null check (octet_length(hash) = 32)
);
comment on table stook.audit_leaf is 'The leaves in the order of the tree, without gaps; hash of the entry as it was when it was sealed.';

create table stook.audit_node (
  level    smallint not null check (level > 0),
  position bigint not null check (position >= 0),
  hash     bytea not null check (octet_length(hash) = 32),
  primary key (level, position)
);
comment on table stook.audit_node is 'Hashes of complete subtrees of 2^level leaves, every eighth level: a proof reads some hundred rows, however long the trail.';

create table stook.audit_token (
  tree_size bigint primary key references stook.audit_seal,
  token     bytea not null,
  got_at    timestamptz not null default now()
);
comment on table stook.audit_token is 'Time stamps of heads by an outside authority (RFC 3161), where one is asked.';

alter table stook.audit_seal drop column token;
alter table stook.audit_seal add column key_id text, add column signature text;
alter table stook.audit_seal alter column prev_root set not null;
comment on table stook.audit_seal is 'Heads of the hash tree over the entries (RFC 9162); signature by the service''s key (Ed25519), if it has one.';

do $$
declare grown text;
begin
  foreach grown in array array['audit_leaf', 'audit_node', 'audit_token'] loop
    execute format('create trigger append_only before update or delete on stook.%I for each row execute function stook.refuse_change()', grown);
    execute format('create trigger append_only_truncate before truncate on stook.%I for each statement execute function stook.refuse_change()', grown);
  end loop;
end $$;

-- A publication's entry names every file, so that a proof of the entry is a proof of the files.
create function stook.audit_publication() returns trigger language plpgsql as $$
begin
  perform stook.write_audit('publication.MADE', 'publication/' || new.run_id,
    jsonb_strip_nulls(jsonb_build_object('stack', new.stack_id, 'attempt', new.attempt, 'share', new.share_id, 'name', new.name,
      'sha256', new.sha256, 'bytes', new.bytes, 'engineVersion', new.engine_version, 'files', new.files,
      'supersedes', new.supersedes)));
  return null;
end $$;
create trigger audit_made after insert on stook.publication for each row execute function stook.audit_publication();

create function stook.audit_tone_settings() returns trigger language plpgsql as $$
begin
  perform stook.write_audit('tone-settings.VERSION', 'tone-settings/' || new.name,
    jsonb_strip_nulls(jsonb_build_object('version', new.version, 'settings', new.settings_id, 'by', new.created_by, 'note', new.note)));
  return null;
end $$;
create trigger audit_version after insert on stook.tone_settings_version
  for each row execute function stook.audit_tone_settings();

-- Two roles to log in through, beside the owner, who migrates: one works, one reads. Where the owner may not make roles, its
-- database administrator does, and grants the same.
do $$
begin
  begin
    create role stook_rw nologin;
  exception when duplicate_object or unique_violation or insufficient_privilege then null;
  end;
  begin
    create role stook_ro nologin;
  exception when duplicate_object or unique_violation or insufficient_privilege then null;
  end;
end $$;

create function stook.grant_roles() returns void language plpgsql as $$
declare
  place text;
  grown text;
begin
  if (select count(*) from pg_roles where rolname in ('stook_rw', 'stook_ro')) < 2 then
    raise notice 'the roles stook_rw and stook_ro are not there; nothing is granted';
    return;
  end if;
  foreach place in array array['stook', 'batch', 'jobs'] loop
    execute format('grant usage on schema %I to stook_rw, stook_ro', place);
    execute format('grant select on all tables in schema %I to stook_rw, stook_ro', place);
    execute format('grant insert, update, delete on all tables in schema %I to stook_rw', place);
    execute format('grant usage on all sequences in schema %I to stook_rw', place);
  end loop;
  for grown in select c.relname from pg_trigger t join pg_class c on c.oid = t.tgrelid
      where t.tgname = 'append_only' and c.relnamespace = 'stook'::regnamespace loop
    execute format('revoke update, delete on stook.%I from stook_rw', grown);
  end loop;
  revoke insert, update, delete on stook.flyway_schema_history, stook.frame_transition, stook.stack_transition, stook.run_transition
    from stook_rw;
end $$;
comment on function stook.grant_roles is 'Called after every migration: what only grows may be added to and read, not changed, by the role that works.';
