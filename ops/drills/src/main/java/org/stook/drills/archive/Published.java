package org.stook.drills.archive;

import org.stook.drills.stage.Stage;
import org.stook.orders.RunId;

/** Publications without a worker. */
final class Published {
    private Published() {}

    static void note(Stage stage, RunId run, String name, long bytes, String sha256) {
        long id = run.value();
        stage.jdbc()
                .sql("update stook.run set state = 'RUNNING', attempt = 1 where id = ?")
                .param(id)
                .update();
        stage.jdbc()
                .sql("insert into stook.attempt (run_id, n, engine_version) values (?, 1, 'drill')")
                .param(id)
                .update();
        stage.jdbc()
                .sql("update stook.run set state = 'PUBLISHING', result_sha256 = ?, result_name = ? where id = ?")
                .params(sha256, name, id)
                .update();
        stage.jdbc()
                .sql("update stook.run set state = 'PUBLISHED' where id = ?")
                .param(id)
                .update();
        stage.jdbc()
                .sql(
                        "insert into stook.publication (run_id, attempt, stack_id, share_id, name, sha256, bytes, engine_version)"
                                + " select id, 1, stack_id, 2, ?, ?, ?, 'drill' from stook.run where id = ?")
                .params(name, sha256, bytes, id)
                .update();
    }
}
