-- Who may do what. A password is kept only as a hash of a library's making; a one-time code only as its SHA-256.
create table stook.person (
  id           bigint generated always as identity primary key,
  name         text not null,
  roles        text[] not null check (cardinality(roles) > 0
                 and roles <@ array['PHOTOGRAPHER', 'OPERATOR', 'ARCHIVIST', 'ADMINISTRATOR']),
  active       boolean not null default true,
  password     text,
  code_sha256  stook.sha256,
  code_until   timestamptz,
  edition      int not null default 1,
  signed_in_at timestamptz,
  created_at   timestamptz not null default now(),
  changed_at   timestamptz not null default now(),
  check ((code_sha256 is null) = (code_until is null))
);
comment on table stook.person is 'People who sign in. Nobody is ever deleted: the audit trail goes on naming them.';
comment on column stook.person.password is 'Hash with its method in front, such as {bcrypt}$2a$...; null until the person has chosen one.';
comment on column stook.person.code_sha256 is 'Of the one-time code with which the person chooses a password, until code_until.';
comment on column stook.person.edition is 'Goes up with every change of roles, state or password; a session of an older edition is over.';
create unique index person_by_name on stook.person (lower(name));
