-- What is done with a stack: runs, their attempts, what was published, and who works.
create table stook.worker (
  id           text primary key,
  host         text not null,
  pid          bigint not null,
  version      text not null,
  schema_min   int not null,
  schema_max   int not null,
  memory_bytes bigint,
  state        text not null default 'ACTIVE' check (state in ('ACTIVE', 'PAUSED', 'DRAINING', 'GONE')),
  pause_reason text,
  free_bytes   bigint,
  started_at   timestamptz not null default now(),
  last_seen    timestamptz not null default now()
);
comment on table stook.worker is 'A worker process, which has exactly one slot; last_seen is the database''s time.';

create table stook.run (
  id                bigint generated always as identity primary key,
  stack_id          bigint not null references stook.stack,
  settings_id       stook.sha256 not null references stook.tone_settings,
  state             text not null default 'READY',
  priority          smallint not null default 50 check (priority between 0 and 100),
  attempt           int not null default 0,
  failures          int not null default 0,
  deaths            int not null default 0,
  last_dead_attempt int not null default 0,
  cancel_requested  boolean not null default false,
  not_before        timestamptz,
  reason_code       text,
  reason_text       text,
  worker_id         text references stook.worker,
  stage             text,
  fraction          real check (fraction between 0 and 1),
  staged_name       text,
  result_sha256     stook.sha256,
  result_name       text,
  score             jsonb,
  verdict           text check (verdict in ('ACCEPT', 'LOOK', 'RESHOOT')),
  created_by        text not null,
  created_at        timestamptz not null default now(),
  queued_at         timestamptz not null default now(),
  changed_at        timestamptz not null default now(),
  check (state not in ('PUBLISHING', 'PUBLISHED', 'SUPERSEDED') or (result_sha256 is not null and result_name is not null))
);
comment on table stook.run is 'One stack with one set of settings. Its row in jobs.scheduled_tasks (instance = id) is what a worker claims.';
comment on column stook.run.attempt is 'The fence: every write of a worker names the attempt it was given and fails when a later one exists.';
comment on column stook.run.failures is 'Transient failures of attempts that ended by themselves.';
comment on column stook.run.deaths is 'Attempts whose process went silent, each counted once (last_dead_attempt).';
comment on column stook.run.queued_at is 'Since when it waits: creation, release or retry. A handed back run keeps its age.';
comment on column stook.run.stage is 'Where the attempt is now, for display only; fraction of the whole run, 0 to 1.';
create unique index run_one_open on stook.run (stack_id, settings_id)
  where state in ('READY', 'HELD', 'RUNNING', 'PUBLISHING');
create index run_by_state on stook.run (state, priority desc, queued_at);
create index run_by_stack on stook.run (stack_id, id desc);

create table stook.attempt (
  run_id             bigint not null references stook.run,
  n                  int not null check (n > 0),
  worker_id          text references stook.worker,
  engine_version     text not null,
  started_at         timestamptz not null default now(),
  ended_at           timestamptz,
  outcome            text check (outcome in
    ('PUBLISHED', 'FAILED', 'TRANSIENT', 'HANDED_BACK', 'CANCELLED', 'DIED', 'LOST')),
  reason_code        text,
  reason_text        text,
  batch_execution_id bigint,
  primary key (run_id, n),
  check ((ended_at is null) = (outcome is null))
);
comment on table stook.attempt is 'One try at a run by one worker. LOST: left without a word, though its task came back.';

create table stook.publication (
  run_id         bigint primary key references stook.run,
  attempt        int not null,
  stack_id       bigint not null references stook.stack,
  share_id       bigint not null references stook.share,
  name           text not null,
  sha256         stook.sha256 not null,
  bytes          bigint not null check (bytes > 0),
  engine_version text not null,
  files          jsonb not null default '[]' check (jsonb_typeof(files) = 'array'),
  supersedes     bigint references stook.run,
  published_at   timestamptz not null default now(),
  foreign key (run_id, attempt) references stook.attempt,
  unique (share_id, name)
);
comment on table stook.publication is 'A composite is official if and only if it is here. One a run: the primary key makes a second impossible.';
comment on column stook.publication.files is 'What stands beside it: [{"name", "sha256", "bytes", "kind"}], kind such as preview or sidecar.';
create index publication_by_stack on stook.publication (stack_id, published_at desc);
create index publication_by_content on stook.publication (sha256);
