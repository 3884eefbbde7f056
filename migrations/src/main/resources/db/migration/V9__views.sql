-- The views of one subject are shown together.
create index stack_by_subject on stook.stack (subject);
