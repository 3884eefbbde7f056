package org.stook.drills.scale;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;

/**
 * Where the time of one run went, milliseconds: the queue's tables say when, the worker's own log says for what.
 *
 * @param rank among its worker's runs, from 1
 * @param claimed since the first claim of all
 * @param cycle from its claim to its worker's next; NaN for the last one
 * @param publishing copying, forcing, reading back, renaming, as the step history says
 * @param said by its worker
 */
record RunCost(String worker, int rank, double claimed, double cycle, double publishing, Said said) {
    /**
     * @param start from its claim until its first frame was about to be read
     * @param imaging from survey to score
     * @param hashing comparing its frames with what they were at intake
     * @param reporting saying where it is
     */
    record Said(double start, double imaging, double hashing, double reporting) {}

    private static final Pattern LINE =
            Pattern.compile("run (\\d+): first frame after ([\\d.]+) ms, imaging ([\\d.]+) ms,"
                    + " comparing with intake ([\\d.]+) ms, reporting ([\\d.]+) ms");

    /** What it took beyond imaging and hashing. */
    double beyond() {
        return cycle - said.imaging() - said.hashing();
    }

    /** Of runs that took one attempt each. */
    static List<RunCost> of(Stage stage) throws IOException {
        Map<Long, Said> said = said(stage);
        return stage.jdbc()
                .sql("""
                        select a.worker_id, row_number() over own, extract(epoch from started_at - min(started_at) over ()) * 1000,
                          coalesce(extract(epoch from lead(started_at) over own - started_at) * 1000, 'NaN'),
                          extract(epoch from s.end_time - s.start_time) * 1000, a.run_id
                        from stook.attempt a join batch.batch_step_execution s
                          on s.job_execution_id = a.batch_execution_id and s.step_name = 'publish'
                        window own as (partition by a.worker_id order by a.started_at) order by a.started_at""")
                .query((row, n) -> new RunCost(
                        row.getString(1),
                        row.getInt(2),
                        row.getDouble(3),
                        row.getDouble(4),
                        row.getDouble(5),
                        Objects.requireNonNull(
                                said.get(row.getLong(6)), "a worker's log does not say what a run cost")))
                .list();
    }

    private static Map<Long, Said> said(Stage stage) throws IOException {
        Map<Long, Said> said = new TreeMap<>();
        for (Slot slot : stage.slots()) {
            for (String line : Files.readAllLines(stage.folder().resolve(slot.name() + ".log"))) {
                Matcher m = LINE.matcher(line);
                if (m.find()) said.put(Long.parseLong(m.group(1)), new Said(ms(m, 2), ms(m, 3), ms(m, 4), ms(m, 5)));
            }
        }
        return said;
    }

    private static double ms(Matcher line, int group) {
        return Double.parseDouble(line.group(group));
    }
}
