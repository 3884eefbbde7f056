-- What the queue page asks for with every change, at any number of stacks.
create index run_waiting on stook.run (queued_at) where state = 'READY';
create index run_unsettled on stook.run (changed_at desc, id desc) where state in ('HELD', 'FAILED', 'QUARANTINED');
create index run_at_work on stook.run (id) where state in ('RUNNING', 'PUBLISHING');
create index publication_lately on stook.publication (published_at desc, run_id desc);
create index stack_asking on stook.stack (id) where state = 'COLLECTING' and question is not null;
create index stack_arriving on stook.stack (id) where state = 'COLLECTING';
create index intake_file_incomplete on stook.intake_file (id) where state = 'INCOMPLETE' and missing_since is null;
-- The order in which runs are taken, with a tie-break, so that a page can go on where the one before ended.
create index scheduled_tasks_page on jobs.scheduled_tasks (priority desc, execution_time, task_instance) where task_name = 'run';
