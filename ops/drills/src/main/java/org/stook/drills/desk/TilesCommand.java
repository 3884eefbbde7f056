package org.stook.drills.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.stook.drills.stage.Program;
import org.stook.drills.stage.Service;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;
import org.stook.orders.RunId;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How soon a large composite can be looked at pixel by pixel. */
@Command(
        name = "tiles",
        mixinStandardHelpOptions = true,
        description =
                "Has a real worker publish a composite of 60 megapixels and asks the service for what a window of 1280 x 1000"
                        + " pixels shows of it at 1:1, at places all over it; prints when the first tile and when all are there.")
public final class TilesCommand implements Callable<Integer> {
    private static final double LONGEST_MILLIS = 500;
    private static final int PLACES = 40;

    @Option(names = "--width", defaultValue = "9504", description = "of the frames (${DEFAULT-VALUE})")
    private int width;

    @Option(names = "--height", defaultValue = "6336", description = "of the frames (${DEFAULT-VALUE})")
    private int height;

    @Option(names = "--patience", defaultValue = "900", description = "seconds for the composite (${DEFAULT-VALUE})")
    private long patience;

    @Option(names = "--port", defaultValue = "18474", description = "of the service (${DEFAULT-VALUE})")
    private int port;

    @Override
    public Integer call() throws Exception {
        Path work = Path.of(System.getProperty("stook.drills.work")).resolve("tiles");
        try (Stage stage = Stage.open(work, new Stage.Plan(width, height, false))) {
            System.err.println("the frames are rendered");
            RunId run = stage.orderMinerals(1).get(0);
            System.err.println("the worker composes them");
            compose(stage, run);
            try (Service service = new Service(stage, port, List.of("-Xmx256m"), false)) {
                return look(service, run);
            }
        }
    }

    private void compose(Stage stage, RunId run) throws Exception {
        Program program = Program.unpack(Path.of(System.getProperty("stook.node.jar")), stage.folder());
        stage.hire(program, new Slot.Setup(List.of("-Xmx4g"), List.of(), Map.of()));
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(patience);
        while (stage.open() > 0 && System.nanoTime() < until) TimeUnit.SECONDS.sleep(1);
        for (Slot slot : stage.slots()) slot.close();
        String state = stage.jdbc()
                .sql("select concat_ws(': ', state, reason_text) from stook.run where id = ?")
                .param(run.value())
                .query(String.class)
                .single();
        if (!state.startsWith("PUBLISHED")) throw new IOException("the composite was not published but is " + state);
    }

    private int look(Service service, RunId run) throws Exception {
        Zoom zoom = Zoom.of(service, run);
        SplittableRandom random = new SplittableRandom(1);
        double[] first = new double[PLACES];
        double[] all = new double[PLACES];
        for (int i = 0; i < PLACES; i++) {
            Zoom.Times times = zoom.window(random.nextDouble(), random.nextDouble());
            first[i] = times.first();
            all[i] = times.all();
        }
        double coldest = first[0];
        Arrays.sort(first);
        Arrays.sort(all);
        System.out.printf(
                "1:1 of a composite of %d x %d: first tile, ms: median %.0f, 95 %% %.0f, longest %.0f, of the first window ever"
                        + " %.0f; all of a window: median %.0f, 95 %% %.0f (%d windows of 1280 x 1000)%n",
                zoom.width(),
                zoom.height(),
                first[PLACES / 2],
                first[(int) Math.ceil(0.95 * PLACES) - 1],
                first[PLACES - 1],
                coldest,
                all[PLACES / 2],
                all[(int) Math.ceil(0.95 * PLACES) - 1],
                PLACES);
        return first[PLACES - 1] <= LONGEST_MILLIS ? 0 : 2;
    }
}
