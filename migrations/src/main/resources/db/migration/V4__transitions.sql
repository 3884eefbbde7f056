-- The only ways a frame, a stack and a run may go. No code path can take another or go unrecorded.
create table stook.frame_transition (
  from_state text not null,
  to_state   text not null,
  meaning    text not null,
  primary key (from_state, to_state)
);
comment on table stook.frame_transition is 'Legal changes of intake_file.state; the first state is SEEN.';
insert into stook.frame_transition values
  ('SEEN', 'STABLE', 'unchanged for long enough'),
  ('STABLE', 'SEEN', 'changed again before it was read'),
  ('STABLE', 'ACCEPTED', 'whole, readable, hashed'),
  ('STABLE', 'INCOMPLETE', 'its end is missing'),
  ('STABLE', 'REJECTED', 'not a readable frame'),
  ('STABLE', 'STRAY', 'does not belong to a sweep'),
  ('INCOMPLETE', 'SEEN', 'changed: looked at again'),
  ('INCOMPLETE', 'STRAY', 'set aside by hand'),
  ('REJECTED', 'SEEN', 'changed: looked at again'),
  ('ACCEPTED', 'SEEN', 'changed before its stack was sealed'),
  ('ACCEPTED', 'STRAY', 'set aside'),
  ('STRAY', 'ACCEPTED', 'taken back'),
  ('STRAY', 'SEEN', 'changed: looked at again');

create table stook.stack_transition (
  from_state text not null,
  to_state   text not null,
  meaning    text not null,
  primary key (from_state, to_state)
);
comment on table stook.stack_transition is 'Legal changes of stack.state; the first state is COLLECTING.';
insert into stook.stack_transition values
  ('COLLECTING', 'SEALED', 'its frames are fixed'),
  ('COLLECTING', 'ASIDE', 'not to be stacked'),
  ('ASIDE', 'COLLECTING', 'taken back'),
  ('SEALED', 'ASIDE', 'withdrawn');

create table stook.run_transition (
  from_state   text not null,
  to_state     text not null,
  attempt_step int not null default 0,
  meaning      text not null,
  primary key (from_state, to_state)
);
comment on table stook.run_transition is 'Legal changes of run.state; the first state is READY. attempt_step: by how much the fence goes up with it.';
insert into stook.run_transition (from_state, to_state, attempt_step, meaning) values
  ('READY', 'RUNNING', 1, 'claimed'),
  ('READY', 'HELD', 0, 'held'),
  ('READY', 'CANCELLED', 0, 'cancelled while waiting'),
  ('HELD', 'READY', 0, 'released'),
  ('HELD', 'CANCELLED', 0, 'cancelled while held'),
  ('RUNNING', 'READY', 0, 'handed back, to be tried again'),
  ('RUNNING', 'PUBLISHING', 0, 'result staged: the point of no return'),
  ('RUNNING', 'FAILED', 0, 'cannot succeed'),
  ('RUNNING', 'CANCELLED', 0, 'cancelled while running'),
  ('RUNNING', 'QUARANTINED', 0, 'too many attempts died'),
  ('PUBLISHING', 'PUBLISHING', 1, 'publishing taken over'),
  ('PUBLISHING', 'RUNNING', 0, 'staged result lost: computed again'),
  ('PUBLISHING', 'PUBLISHED', 0, 'published'),
  ('PUBLISHING', 'FAILED', 0, 'cannot be published'),
  ('PUBLISHING', 'QUARANTINED', 0, 'too many attempts died'),
  ('PUBLISHED', 'SUPERSEDED', 0, 'a later run of the stack is published'),
  ('FAILED', 'READY', 0, 'retried by hand'),
  ('QUARANTINED', 'READY', 0, 'retried by hand');

create trigger append_only before update or delete on stook.run_transition for each row execute function stook.refuse_change();
create trigger append_only before update or delete on stook.stack_transition for each row execute function stook.refuse_change();
create trigger append_only before update or delete on stook.frame_transition for each row execute function stook.refuse_change();

create function stook.refused(subject text, from_state text, to_state text, detail text default '') returns void
language plpgsql as $$
begin
  raise exception '% may not go from % to %', subject, from_state, to_state || detail using errcode = 'check_violation';
end $$;

-- Intake files.
create function stook.guard_frame() returns trigger language plpgsql as $$
begin
  if tg_op = 'INSERT' then
    if new.state <> 'SEEN' then
      perform stook.refused('file ' || new.rel_path, 'nowhere', new.state);
    end if;
  elsif not exists (select 1 from stook.frame_transition t where t.from_state = old.state and t.to_state = new.state) then
    perform stook.refused('file ' || new.rel_path, old.state, new.state);
  end if;
  return new;
end $$;
create trigger guard_new before insert on stook.intake_file for each row execute function stook.guard_frame();
create trigger guard_state before update on stook.intake_file for each row
  when (old.state is distinct from new.state) execute function stook.guard_frame();

create function stook.audit_frame() returns trigger language plpgsql as $$
begin
  perform stook.write_audit('frame.' || old.state || '-' || new.state, 'frame/' || new.id,
    jsonb_strip_nulls(jsonb_build_object('file', new.rel_path, 'sha256', new.sha256, 'reasonCode', new.reason_code, 'reason', new.reason)));
  return null;
end $$;
create trigger audit_state after update on stook.intake_file for each row
  when (old.state is distinct from new.state) execute function stook.audit_frame();

-- Stacks.
create function stook.guard_stack() returns trigger language plpgsql as $$
begin
  if tg_op = 'INSERT' then
    if new.state <> 'COLLECTING' then
      perform stook.refused('a new stack', 'nowhere', new.state);
    end if;
    return new;
  end if;
  if not exists (select 1 from stook.stack_transition t where t.from_state = old.state and t.to_state = new.state) then
    perform stook.refused('stack ' || new.id, old.state, new.state);
  end if;
  new.changed_at := now();
  if new.state = 'SEALED' then
    new.sealed_at := now();
  end if;
  return new;
end $$;
create trigger guard_new before insert on stook.stack for each row execute function stook.guard_stack();
create trigger guard_state before update on stook.stack for each row
  when (old.state is distinct from new.state) execute function stook.guard_stack();

create function stook.audit_stack() returns trigger language plpgsql as $$
begin
  perform stook.write_audit('stack.' || old.state || '-' || new.state, 'stack/' || new.id,
    jsonb_strip_nulls(jsonb_build_object('subject', new.subject, 'manifest', new.manifest_sha256, 'reason', new.reason)));
  return null;
end $$;
create trigger audit_state after update on stook.stack for each row
  when (old.state is distinct from new.state) execute function stook.audit_stack();

create function stook.guard_stack_frame() returns trigger language plpgsql as $$
declare
  touched bigint;
begin
  touched := case when tg_op = 'DELETE' then old.stack_id else new.stack_id end;
  if exists (select 1 from stook.stack s where s.id = touched and s.manifest_sha256 is not null) then
    raise exception 'stack % is sealed: its frames are fixed', touched using errcode = 'check_violation';
  end if;
  return case when tg_op = 'DELETE' then old else new end;
end $$;
create trigger guard_sealed before insert or update or delete on stook.stack_frame
  for each row execute function stook.guard_stack_frame();

-- Runs.
create function stook.guard_run() returns trigger language plpgsql as $$
declare
  step int;
begin
  if tg_op = 'INSERT' then
    if new.state <> 'READY' or new.attempt <> 0 then
      perform stook.refused('a new run', 'nowhere', new.state, ', attempt ' || new.attempt);
    end if;
    return new;
  end if;
  select t.attempt_step into step from stook.run_transition t where t.from_state = old.state and t.to_state = new.state;
  if not found then
    perform stook.refused('run ' || new.id, old.state, new.state);
  end if;
  if new.attempt <> old.attempt + step then
    perform stook.refused('run ' || new.id, old.state, new.state, format(' with attempt %s after %s', new.attempt, old.attempt));
  end if;
  new.changed_at := now();
  return new;
end $$;
create trigger guard_new before insert on stook.run for each row execute function stook.guard_run();
create trigger guard_state before update on stook.run for each row
  when (old.state is distinct from new.state or old.attempt is distinct from new.attempt) execute function stook.guard_run();

create function stook.audit_run() returns trigger language plpgsql as $$
begin
  perform stook.write_audit('run.' || old.state || '-' || new.state, 'run/' || new.id,
    jsonb_strip_nulls(jsonb_build_object('stack', new.stack_id, 'attempt', new.attempt, 'worker', new.worker_id,
      'reasonCode', new.reason_code, 'reason', new.reason_text, 'sha256', new.result_sha256, 'name', new.result_name)));
  return null;
end $$;
create trigger audit_state after update on stook.run for each row
  when (old.state is distinct from new.state or old.attempt is distinct from new.attempt) execute function stook.audit_run();
