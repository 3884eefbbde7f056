-- What is on the shares and what the photographers shot. Everything of ours lives in the schema "stook".
create schema if not exists stook;

create domain stook.sha256 as text check (value ~ '^[0-9a-f]{64}$');

create table stook.share (
  id         bigint generated always as identity primary key,
  name       text not null unique,
  kind       text not null check (kind in ('INTAKE', 'PUBLISH')),
  root       text not null,
  sentinel   uuid not null default gen_random_uuid(),
  state      text not null default 'OK' check (state in ('OK', 'GONE', 'FULL', 'READ_ONLY')),
  state_text text,
  free_bytes bigint,
  changed_at timestamptz not null default now()
);
comment on table stook.share is 'A mounted folder tree; paths elsewhere are relative to its root, which may differ from node to node.';
comment on column stook.share.sentinel is 'Written in a file at the root: without it the share is taken as not mounted.';

create table stook.tone_settings (
  id         stook.sha256 primary key,
  body       jsonb not null check (jsonb_typeof(body) = 'object'),
  created_at timestamptz not null default now()
);
comment on table stook.tone_settings is 'One immutable set of adjustments; the id is the SHA-256 of its canonical JSON (RFC 8785).';

create table stook.tone_settings_version (
  name        text not null,
  version     int not null check (version > 0),
  settings_id stook.sha256 not null references stook.tone_settings,
  note        text,
  created_by  text not null,
  created_at  timestamptz not null default now(),
  primary key (name, version)
);
comment on table stook.tone_settings_version is 'The named history of tone settings: a change is a new version, the old ones stay.';

create table stook.station (
  id                bigint generated always as identity primary key,
  name              text not null unique,
  intake_share_id   bigint not null references stook.share,
  intake_folder     text not null,
  publish_share_id  bigint references stook.share,
  publish_folder    text not null default '',
  tone_settings_id  stook.sha256 references stook.tone_settings,
  settings          jsonb not null default '{}' check (jsonb_typeof(settings) = 'object'),
  settings_version  int not null default 1,
  active            boolean not null default true,
  changed_at        timestamptz not null default now(),
  unique (intake_share_id, intake_folder)
);
comment on table stook.station is 'Camera, lens and table, and the folder their frames arrive in; settings_version goes up with each change of settings.';
comment on column stook.station.publish_share_id is 'Where its composites go; null: stays on the intake share.';
comment on column stook.station.tone_settings_id is 'What new runs of this station start with.';

create table stook.frame (
  sha256      stook.sha256 primary key,
  bytes       bigint not null check (bytes > 0),
  format      text not null,
  width       int not null check (width > 0),
  height      int not null check (height > 0),
  bits        smallint not null,
  captured_at timestamp,
  meta        jsonb not null default '{}',
  survey      jsonb,
  created_at  timestamptz not null default now()
);
comment on table stook.frame is 'The content of one frame, known by its bytes; where it lies is in intake_file.';
comment on column stook.frame.captured_at is 'The camera''s own clock, which has no zone.';
comment on column stook.frame.survey is 'Sharpness grid and exposure as measured on arrival.';

create table stook.intake_file (
  id           bigint generated always as identity primary key,
  share_id     bigint not null references stook.share,
  rel_path     text not null,
  station_id   bigint references stook.station,
  size_bytes   bigint not null,
  mtime_ns     bigint not null,
  file_key     text,
  first_seen   timestamptz not null default now(),
  last_change  timestamptz not null default now(),
  missing_since timestamptz,
  stable_polls int not null default 0,
  state        text not null default 'SEEN',
  sha256       stook.sha256 references stook.frame,
  reason_code  text,
  reason       text,
  unique (share_id, rel_path),
  check (state <> 'ACCEPTED' or sha256 is not null),
  check (state not in ('INCOMPLETE', 'REJECTED', 'STRAY') or reason is not null)
);
comment on table stook.intake_file is 'A file in a station''s folder and how far it got. Never moved, never written; set aside only here, with a reason.';
comment on column stook.intake_file.mtime_ns is 'Compared for equality only: the share''s clock is not ours.';
create index intake_file_open on stook.intake_file (share_id, state) where state in ('SEEN', 'STABLE', 'INCOMPLETE');
create index intake_file_by_content on stook.intake_file (sha256);

create table stook.stack (
  id                bigint generated always as identity primary key,
  station_id        bigint not null references stook.station,
  subject           text not null,
  folder            text,
  state             text not null default 'COLLECTING',
  reason            text,
  manifest_sha256   stook.sha256 unique,
  reference_ordinal int,
  on_table          boolean not null default false,
  created_at        timestamptz not null default now(),
  changed_at        timestamptz not null default now(),
  sealed_at         timestamptz,
  check (state <> 'SEALED' or manifest_sha256 is not null)
);
comment on table stook.stack is 'The frames of one subject view. Sealed: its frames are fixed, and the manifest hash names exactly them.';
comment on column stook.stack.on_table is 'The subject is still mounted: its runs go first.';
comment on column stook.stack.reference_ordinal is 'The frame whose geometry and look the others follow; null: the machine chooses.';
create index stack_by_station on stook.stack (station_id, id desc);

create table stook.stack_frame (
  stack_id    bigint not null references stook.stack,
  ordinal     int not null check (ordinal >= 0),
  sha256      stook.sha256 not null references stook.frame,
  share_id    bigint not null references stook.share,
  rel_path    text not null,
  role        text not null default 'SWEEP' check (role in ('SWEEP', 'SLATE', 'TARGET', 'STRAY')),
  reason      text,
  primary key (stack_id, ordinal),
  check (role <> 'STRAY' or reason is not null)
);
comment on table stook.stack_frame is 'The frames of a stack in sweep order, each with its role; a stray has a reason.';
create index stack_frame_by_content on stook.stack_frame (sha256);
