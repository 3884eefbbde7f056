package org.stook.drills.scale;

import org.stook.drills.stage.Stage;

/**
 * What was used up to some moment, or for each run.
 *
 * @param published runs
 * @param workers processor time of all workers, seconds
 * @param database processor time of the server and its sessions, seconds
 * @param syncs how often the database's log was forced to the disk
 */
record Used(int published, double workers, double database, double syncs) {
    static Used of(Stage stage) {
        int published = stage.jdbc()
                .sql("select count(*) from stook.publication")
                .query(Integer.class)
                .single();
        long syncs = stage.jdbc()
                .sql("select coalesce(sum(fsyncs), 0) from pg_stat_io where object = 'wal'")
                .query(Long.class)
                .single();
        double workers = stage.slots().stream()
                .mapToDouble(s -> s.cpu().toMillis() / 1e3)
                .sum();
        return new Used(published, workers, stage.database().cpu().toMillis() / 1e3, syncs);
    }

    /** For each run that was published since. */
    Used each(Used before) {
        int runs = published - before.published;
        return new Used(
                runs,
                (workers - before.workers) / runs,
                (database - before.database) / runs,
                (syncs - before.syncs) / runs);
    }
}
