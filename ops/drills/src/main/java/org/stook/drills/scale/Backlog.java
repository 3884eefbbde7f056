package org.stook.drills.scale;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.drills.stage.Stage;
import org.stook.orders.RunId;

/** A long queue of runs, made by the statements of the tables rather than one by one. */
public final class Backlog {
    private final Stage stage;
    private final JdbcClient jdbc;

    public Backlog(Stage stage) {
        this.stage = stage;
        this.jdbc = stage.jdbc();
    }

    /** Three in four ordered normally, one in four as backlog; ordered over the last hours, one every 0.6 s. */
    public void fill(int runs) {
        jdbc.sql("insert into stook.stack (station_id, subject) select 1, 'Waiting ' || n from generate_series(1, ?) n")
                .param(runs)
                .update();
        jdbc.sql("update stook.stack set state = 'SEALED', manifest_sha256 = lpad(to_hex(id), 64, '0')")
                .update();
        jdbc.sql("""
                        insert into stook.run (stack_id, settings_id, priority, created_by, queued_at)
                        select id, repeat('cd', 32), case when id % 4 = 0 then 20 else 50 end, 'drill',
                          now() - make_interval(secs => (? - id) * 0.6) from stook.stack order by id""").param(runs).update();
        jdbc.sql("""
                        insert into jobs.scheduled_tasks (task_name, task_instance, execution_time, picked, version, priority)
                        select 'run', id::text, queued_at, false, 1, priority from stook.run""").update();
        jdbc.sql("analyze jobs.scheduled_tasks").update();
        jdbc.sql("analyze stook.run").update();
    }

    /** Orders one more run the usual way. */
    RunId order(int priority) {
        long stack = jdbc.sql("insert into stook.stack (station_id, subject) values (1, 'Mounted') returning id")
                .query(Long.class)
                .single();
        jdbc.sql("update stook.stack set state = 'SEALED', manifest_sha256 = lpad(to_hex(id), 64, '0') where id = ?")
                .param(stack)
                .update();
        return stage.order(stack, priority);
    }
}
