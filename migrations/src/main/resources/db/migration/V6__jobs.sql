-- db-scheduler's tables (its documented PostgreSQL columns and indexes, 16.12.0), two of the same shape.
-- Workers see only jobs.scheduled_tasks, the service's recurring tasks only jobs.service_tasks: so each scheduler knows
-- every task name in its table, and none can pick up what it cannot run.
create schema if not exists jobs;

create table jobs.scheduled_tasks (
  task_name            text not null,
  task_instance        text not null,
  task_data            bytea,
  execution_time       timestamptz not null,
  picked               boolean not null,
  picked_by            text,
  last_success         timestamptz,
  last_failure         timestamptz,
  consecutive_failures int,
  last_heartbeat       timestamptz,
  version              bigint not null,
  priority             smallint,
  primary key (task_name, task_instance)
);
comment on table jobs.scheduled_tasks is 'Runs that wait or run: task "run", instance = run id, no data. priority is the aged one, run.priority the given one.';
create index scheduled_tasks_time on jobs.scheduled_tasks (execution_time);
create index scheduled_tasks_heartbeat on jobs.scheduled_tasks (last_heartbeat);
create index scheduled_tasks_order on jobs.scheduled_tasks (priority desc, execution_time);

create table jobs.service_tasks (like jobs.scheduled_tasks including all);
comment on table jobs.service_tasks is 'The service''s recurring tasks, each run by one of the services at a time.';
