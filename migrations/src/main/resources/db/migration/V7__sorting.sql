-- How files become stacks: which stack a file belongs to, what a person has to settle, versions of a stack, settings of stations.
alter table stook.intake_file
  add column stack_id bigint references stook.stack,
  add column role     text not null default 'FRAME' check (role in ('FRAME', 'SLATE', 'TARGET', 'RAW')),
  add column kept     boolean not null default false;
comment on column stook.intake_file.stack_id is 'The stack it belongs to; null while that is not decided. A new version of a stack takes its files along.';
comment on column stook.intake_file.role is 'FRAME: of the sweep unless it strays. SLATE, TARGET: kept, never blended. RAW: kept beside the picture of the same capture.';
comment on column stook.intake_file.kept is 'Taken back by a person: the intake does not set it aside again.';
create index intake_file_by_stack on stook.intake_file (stack_id);
create index intake_file_loose on stook.intake_file (share_id) where stack_id is null and state = 'ACCEPTED';

update stook.intake_file f set stack_id = (
  select s.id from stook.stack s join stook.station t on t.id = s.station_id
  where t.intake_share_id = f.share_id and s.folder is not null and starts_with(f.rel_path, s.folder || '/')
  order by exists (select 1 from stook.stack_frame sf where sf.stack_id = s.id and sf.rel_path = f.rel_path) desc, s.id desc limit 1);

alter table stook.stack
  add column version   int not null default 1 check (version > 0),
  add column origin_id bigint references stook.stack,
  add column view_name text,
  add column codes     jsonb not null default '[]' check (jsonb_typeof(codes) = 'array'),
  add column named     boolean not null default false,
  add column question  text,
  add column word      jsonb;
comment on column stook.stack.origin_id is 'The first version of it; null: this is the first.';
comment on column stook.stack.view_name is 'Which view of the subject: dorsal, front.';
comment on column stook.stack.codes is 'What its slates say: [{"role", "symbology", "text", "file"}].';
comment on column stook.stack.named is 'A person gave it its subject; the intake leaves it.';
comment on column stook.stack.question is 'What a person has to settle before it may be sealed, a sentence; its subject is provisional until then.';
comment on column stook.stack.word is 'Whether its sweep is whole: {"whole", "faults": [{"kind", "sentence"}], "frames", "by"}. Written by the intake, or by who knows better.';
create index frame_not_looked_at on stook.frame (sha256) where survey is null;
create index stack_by_origin on stook.stack (coalesce(origin_id, id));
create index stack_collecting on stook.stack (station_id) where state = 'COLLECTING';

alter table stook.stack_frame drop constraint stack_frame_role_check;
alter table stook.stack_frame add constraint stack_frame_role_check
  check (role in ('SWEEP', 'SLATE', 'TARGET', 'RAW', 'STRAY'));

create table stook.station_settings (
  station_id bigint not null references stook.station,
  version    int not null check (version > 0),
  body       jsonb not null check (jsonb_typeof(body) = 'object'),
  note       text,
  created_by text not null,
  created_at timestamptz not null default now(),
  primary key (station_id, version)
);
comment on table stook.station_settings is 'The history of a station''s settings: a change is a new version, the old ones stay. The newest is in station too.';
create trigger append_only before update or delete on stook.station_settings for each row execute function stook.refuse_change();
create trigger append_only_truncate before truncate on stook.station_settings for each statement execute function stook.refuse_change();
alter table stook.station alter column settings_version set default 0;
update stook.station set settings_version = 0 where settings = '{}' and not exists (select 1 from stook.station_settings);
