-- What an archive needs: publications in the order in which they can be seen, saved pulls, and what is handed out as packages.

-- A number for each publication such that whoever sees a number sees every smaller one too. Sequences cannot do that: they count in the
-- order of calling, and a transaction that called first may commit last. Here a single row counts. It is locked from the moment a
-- publication is numbered, at the very end of its transaction, until the commit is visible, so the next number cannot be had before.
-- A transaction that fails gives its number back: there are no gaps.
create table stook.publication_count (
  one  boolean primary key default true check (one),
  last bigint not null
);
comment on table stook.publication_count is 'One row: the number of the newest publication. Its lock is what makes the numbers follow the commits.';

create table stook.publication_order (
  seq    bigint primary key,
  run_id bigint not null unique references stook.publication
);
comment on table stook.publication_order is 'Publications in the order of their commits, without gaps: the cursor of those who pull what is new.';

insert into stook.publication_order (seq, run_id)
  select row_number() over (order by published_at, run_id), run_id from stook.publication;
insert into stook.publication_count (last) select count(*) from stook.publication_order;

create function stook.number_publication() returns trigger language plpgsql as $$
declare
  n bigint;
begin
  update stook.publication_count set last = last + 1 returning last into n;
  insert into stook.publication_order (seq, run_id) values (n, new.run_id);
  return null;
end $$;
create constraint trigger number_publication after insert on stook.publication
  deferrable initially deferred for each row execute function stook.number_publication();
create trigger append_only before update or delete on stook.publication_order for each row execute function stook.refuse_change();
create trigger append_only_truncate before truncate on stook.publication_order for each statement execute function stook.refuse_change();

create table stook.pull (
  name       text primary key check (name ~ '^[a-z0-9][a-z0-9-]{0,59}$'),
  filter     jsonb not null default '{}' check (jsonb_typeof(filter) = 'object'),
  taken_seq  bigint not null default 0 check (taken_seq >= 0),
  created_by text not null,
  created_at timestamptz not null default now(),
  taken_at   timestamptz
);
comment on table stook.pull is 'A saved pull: what somebody fetches again and again, and up to which publication they have it.';
comment on column stook.pull.taken_seq is 'They said that they have everything up to here. Never goes back by itself.';

create table stook.content_digest (
  sha256      stook.sha256 primary key,
  bytes       bigint not null check (bytes >= 0),
  sha512      text not null check (sha512 ~ '^[0-9a-f]{128}$'),
  measured_at timestamptz not null default now()
);
comment on table stook.content_digest is 'The second hash of files whose first one is known: bags carry SHA-512. Filled when a file is first packed.';

create table stook.package (
  id          bigint generated always as identity primary key,
  runs        bigint[] not null check (cardinality(runs) > 0),
  frames      text not null check (frames in ('NAMED', 'INCLUDED', 'FETCH')),
  audit_until bigint not null,
  state       text not null default 'PREPARING' check (state in ('PREPARING', 'READY', 'FAILED')),
  bytes_done  bigint not null default 0,
  bytes_total bigint not null default 0,
  reason      text,
  created_by  text not null,
  created_at  timestamptz not null default now(),
  changed_at  timestamptz not null default now(),
  check (state <> 'FAILED' or reason is not null)
);
comment on table stook.package is 'A bag of many publications, made ready in the background: every file is read and compared with its hash once.';
comment on column stook.package.audit_until is 'The newest audit entry that goes in, so that the same package has the same bytes tomorrow.';
create index package_open on stook.package (id) where state = 'PREPARING';

create table stook.package_file (
  package_id bigint not null references stook.package,
  run_id     bigint not null,
  name       text not null check (name ~ '^[A-Za-z0-9._-]+$'),
  body       bytea not null,
  primary key (package_id, run_id, name)
);
comment on table stook.package_file is 'Small files made for one package, such as proofs: kept, because made again later they would be others.';
