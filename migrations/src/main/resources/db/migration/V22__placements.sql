-- Where the frames of a run lie, so that an attempt that takes over after a death need not register them again.
create table stook.placements (
  run_id   bigint primary key references stook.run,
  attempt  int not null,
  body     text not null,
  saved_at timestamptz not null default now()
);
comment on table stook.placements is 'A help and no more: whoever takes it compares version and frame hashes within, or registers again. Gone when the run is over.';
alter table stook.attempt add column placements_of int;
comment on column stook.attempt.placements_of is 'The attempt whose saved placements this one went by; null if it registered.';
