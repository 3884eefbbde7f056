-- What an operator wrote down: which files of a folder are of which subject. Goes before anything that sorting would find out.
create table stook.manifest_line (
  id         bigint generated always as identity primary key,
  file_id    bigint not null references stook.intake_file,
  folder     text not null,
  first_name text not null,
  last_name  text not null,
  subject    text not null,
  view_name  text,
  check (first_name <= last_name)
);
comment on table stook.manifest_line is 'One stack: the files of the folder whose names lie between the first and the last, in the order of their characters.';
create index manifest_line_by_file on stook.manifest_line (file_id);
