package org.stook.drills.desk;

import java.time.Duration;
import org.stook.drills.stage.Service;
import org.stook.drills.stage.Stage;

/**
 * Processor time that was used up to a moment.
 *
 * @param service by the service
 * @param database by the database server and all that it forked
 */
record Cost(Duration service, Duration database, long nanos) {
    static Cost now(Service service, Stage stage) {
        return new Cost(
                ProcessHandle.of(service.pid())
                        .orElseThrow()
                        .info()
                        .totalCpuDuration()
                        .orElse(Duration.ZERO),
                stage.database().cpu(),
                System.nanoTime());
    }

    /** Of one core, per cent. */
    double servicePercent(Cost before) {
        return percent(service.minus(before.service), before);
    }

    double databasePercent(Cost before) {
        return percent(database.minus(before.database), before);
    }

    private double percent(Duration used, Cost before) {
        return 100.0 * used.toNanos() / (nanos - before.nanos);
    }
}
