package org.stook.app.desk;

import java.util.Arrays;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A hundred thousand invented stacks: a tenth waits, a few need a person, the rest is published. */
final class QueueAtScale {
    private QueueAtScale() {}

    /** Fills the database past the triggers, whose rules this keeps: transitions would take an hour. */
    static void fill(JdbcClient jdbc, int stacks) {
        List<String> acts = List.of(
                "set session_replication_role = replica",
                "insert into stook.tone_settings (id, body) values (repeat('c', 64), '{}') on conflict do nothing",
                "insert into stook.stack (station_id, subject, state, manifest_sha256, sealed_at)"
                        + " select 1, 'HC-' || n, 'SEALED', lpad(to_hex(n), 64, '0'), now() from generate_series(1, :n) n",
                "insert into stook.run (stack_id, settings_id, state, created_by, result_sha256, result_name, verdict,"
                        + " reason_text, queued_at, changed_at) select id, repeat('c', 64),"
                        + " case when id % 10 = 0 then 'READY' when id % 1000 = 1 then 'FAILED' else 'PUBLISHED' end, 'intake',"
                        + " lpad(to_hex(id), 64, '0'), 'x/' || id, 'ACCEPT', 'out of line', now() - id * interval '1 second',"
                        + " now() - id * interval '1 second' from stook.stack where subject like 'HC-%'",
                "insert into jobs.scheduled_tasks (task_name, task_instance, execution_time, picked, version, priority)"
                        + " select 'run', id::text, queued_at, false, 1, 50 from stook.run where state = 'READY'"
                        + " on conflict do nothing",
                "insert into stook.attempt (run_id, n, engine_version, ended_at, outcome) select id, 1, '0.1.0', now(),"
                        + " 'PUBLISHED' from stook.run where result_name like 'x/%' and state = 'PUBLISHED'",
                "insert into stook.publication (run_id, attempt, stack_id, share_id, name, sha256, bytes, engine_version,"
                        + " published_at) select id, 1, stack_id, (select min(id) from stook.share where kind = 'PUBLISH'),"
                        + " result_name, result_sha256, 1, '0.1.0', changed_at from stook.run"
                        + " where result_name like 'x/%' and state = 'PUBLISHED'",
                "insert into stook.frame (sha256, bytes, format, width, height, bits)"
                        + " values (repeat('e', 64), 900000, 'tiff', 1200, 900, 16) on conflict do nothing",
                "insert into stook.intake_file (share_id, station_id, rel_path, size_bytes, mtime_ns, state, sha256, stack_id)"
                        + " select (select min(id) from stook.share where kind = 'INTAKE'), 1, s.subject || '/' || s.id || '-' || n"
                        + " || '.tif', 900000, 1, 'ACCEPTED', repeat('e', 64), s.id from stook.stack s, generate_series(1, 3) n"
                        + " where s.subject like 'HC-%'",
                "insert into stook.audit_entry (at, actor, kind, subject, body) select now(), 'intake', 'stack.SEALED',"
                        + " 'stack/' || id, '{}' from stook.stack where subject like 'HC-%'",
                "set session_replication_role = default");
        for (String act : acts) {
            jdbc.sql(act.replace(":n", Integer.toString(stacks))).update();
        }
        jdbc.sql("analyze").update();
    }

    /** 95th percentile, milliseconds. */
    static double p95(int times, Runnable act) {
        for (int i = 0; i < times; i++) act.run(); // What the virtual machine has to learn is no time of the page.
        double[] took = new double[times];
        for (int i = 0; i < times; i++) {
            long begin = System.nanoTime();
            act.run();
            took[i] = (System.nanoTime() - begin) / 1e6;
        }
        Arrays.sort(took);
        return took[(int) Math.ceil(0.95 * times) - 1];
    }
}
