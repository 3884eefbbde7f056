-- Frames are looked for by the beginning of their file's name, in any case, among millions.
create function stook.file_name(path text) returns text language sql immutable parallel safe as $$
  select lower(regexp_replace(path, '^.*/', ''))
$$;
comment on function stook.file_name is 'The last part of a path, in lower case.';
create index intake_file_by_name on stook.intake_file (stook.file_name(rel_path) text_pattern_ops);
create index run_by_settings on stook.run (settings_id, id desc);
