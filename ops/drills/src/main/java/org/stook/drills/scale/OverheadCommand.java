package org.stook.drills.scale;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.stook.drills.stage.Program;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What queue, batch job and publishing cost on top of the imaging, on true workers. */
@Command(
        name = "overhead",
        mixinStandardHelpOptions = true,
        description =
                "Works off true runs with one worker, then with two; prints throughput and what a run costs beyond its"
                        + " imaging steps.")
public final class OverheadCommand implements Callable<Integer> {
    @Option(names = "--runs", defaultValue = "60", description = "for each number of workers (${DEFAULT-VALUE})")
    private int runs;

    @Option(names = "--size", defaultValue = "480", description = "width of the frames (${DEFAULT-VALUE})")
    private int width;

    /** The first runs warm the program up. */
    private static final int COLD = 10;

    private record Measured(double runsASecond, double cycle, double imaging, double publishing) {}

    @Override
    public Integer call() throws Exception {
        Measured one = measure(1);
        print(1, one);
        Measured two = measure(2);
        print(2, two);
        System.out.printf(
                "two workers against one: %.2f times the throughput%n", two.runsASecond() / one.runsASecond());
        return 0;
    }

    private static void print(int workers, Measured m) {
        System.out.printf(
                "%d worker(s): %.2f runs/s; a run takes %.0f ms from claim to claim, of which survey to score %.0f,"
                        + " publishing (copy, force, read back, hash, rename) %.0f, the rest (queue, claim, job, fence) %.0f%n",
                workers,
                m.runsASecond(),
                m.cycle(),
                m.imaging(),
                m.publishing(),
                m.cycle() - m.imaging() - m.publishing());
    }

    private Measured measure(int workers) throws Exception {
        Path folder = Path.of(System.getProperty("stook.drills.work")).resolve("overhead");
        try (Stage stage = Stage.open(folder, new Stage.Plan(width, width * 2 / 3, true))) {
            stage.orderMinerals((runs + COLD) * workers);
            Program program = Program.unpack(Path.of(System.getProperty("stook.node.jar")), folder);
            for (int w = 0; w < workers; w++) {
                // As delivered: with the optimising compiler.
                stage.hire(
                        program, new Slot.Setup(List.of("-Xmx512m", "-XX:TieredStopAtLevel=4"), List.of(), Map.of()));
            }
            while (stage.open() > 0) {
                TimeUnit.MILLISECONDS.sleep(500);
            }
            return figures(stage);
        }
    }

    /** From the tables: each worker's claims follow each other, the steps of the jobs say what the imaging took. */
    private static Measured figures(Stage stage) {
        return stage.jdbc()
                .sql("""
                        with warm as (select a.*, extract(epoch from lead(started_at) over w - started_at) * 1000 as cycle,
                            row_number() over w as rank
                          from stook.attempt a window w as (partition by worker_id order by started_at)),
                        steps as (select w.run_id,
                            sum(extract(epoch from s.end_time - s.start_time) * 1000) filter (where step_name <> 'publish') as imaging,
                            sum(extract(epoch from s.end_time - s.start_time) * 1000) filter (where step_name = 'publish') as publishing
                          from warm w join batch.batch_step_execution s on s.job_execution_id = w.batch_execution_id group by 1)
                        select (count(*) / extract(epoch from max(w.ended_at) - min(w.started_at)))::float8,
                          avg(w.cycle)::float8, avg(s.imaging)::float8, avg(s.publishing)::float8
                        from warm w join steps s using (run_id) where w.rank > %d""".formatted(COLD))
                .query((row, n) -> new Measured(row.getDouble(1), row.getDouble(2), row.getDouble(3), row.getDouble(4)))
                .single();
    }
}
