-- Spring Batch's own script has no index on what its tables look each other up by. After some hundred thousand executions each
-- start of a job, and each pruning, would read whole tables.
create index batch_job_execution_by_instance on batch.batch_job_execution (job_instance_id);
create index batch_job_execution_params_by_execution on batch.batch_job_execution_params (job_execution_id);
create index batch_step_execution_by_execution on batch.batch_step_execution (job_execution_id);
