package org.stook.studioday;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Bad writers, a share that goes away in the middle of a burst, a service that is killed at any instant. */
@Command(
        name = "faults",
        description = "Kills the service, unmounts the share, writes badly; checks the history of every file.")
final class FaultsCommand implements Callable<Integer> {
    private static final String RULES = """
            {"splitting": {"folders": "stack"},
             "patience": {"settleSeconds": 0.5, "quietSeconds": 3, "graceSeconds": 4}}""";

    private static final int OUTAGE_EVERY = 5;

    @Mixin
    private DrillOptions options = new DrillOptions();

    @Option(names = "--kills", description = "how often the service is killed (${DEFAULT-VALUE})")
    private int kills = 50;

    @Option(names = "--stacks", description = "that begin to arrive before each kill (${DEFAULT-VALUE})")
    private int stacks = 2;

    @Override
    public Integer call() throws Exception {
        System.out.println("rendering");
        List<Roll.Shots> roll = Roll.of(options.seed(), 4);
        SplittableRandom random = new SplittableRandom(options.seed());
        Mount mount = Mount.of(options.home(), "north");
        WriterLog log = new WriterLog();
        ExecutorService writers = Executors.newCachedThreadPool();
        try (Trial trial = Trial.of(options, Map.of("north", RULES), true)) {
            trial.service().start();
            List<Future<?>> writing = new ArrayList<>();
            int outages = 0;
            for (int kill = 0; kill < kills; kill++) {
                for (int s = 0; s < stacks; s++) {
                    BadWriter writer = new BadWriter(
                            mount.share(),
                            "HC-%04d".formatted(3000 + kill * stacks + s),
                            roll.get(random.nextInt(roll.size())).sweep(),
                            random.split(),
                            log);
                    writing.add(writers.submit(writer));
                }
                if (kill % OUTAGE_EVERY == OUTAGE_EVERY / 2) {
                    outage(mount, random);
                    outages++;
                }
                Thread.sleep(random.nextInt(4000));
                trial.service().kill();
                // One in three is killed again while it starts.
                if (random.nextInt(3) == 0) {
                    trial.service().launch();
                    Thread.sleep(random.nextInt(6000));
                    trial.service().kill();
                    kill++;
                }
                trial.service().start();
            }
            for (Future<?> one : writing) one.get();
            trial.rest(options.limit());
            History history = new History(log, mount);
            List<Line> lines = new ArrayList<>();
            lines.add(new Line("kills, outages of the share", kills + ", " + outages, "", true));
            lines.add(new Line("files written, writes", log.files() + ", " + log.writes(), "", true));
            try (var connection = trial.connect()) {
                lines.addAll(history.check(connection));
            }
            return Line.print("seed " + options.seed(), lines, history.misses());
        } finally {
            writers.shutdownNow();
        }
    }

    private static void outage(Mount mount, SplittableRandom random) throws IOException, InterruptedException {
        mount.unmount();
        Thread.sleep(random.nextInt(2000, 6000));
        mount.mount();
    }

    /** Where the service sees the share: a link to it, or an empty folder while it is "unmounted". */
    record Mount(Path share, Path point) {
        static Mount of(Path home, String name) throws IOException {
            Mount mount = new Mount(
                    Files.createDirectories(home.resolve("share").toAbsolutePath()),
                    home.resolve(name).toAbsolutePath());
            mount.mount();
            return mount;
        }

        void mount() throws IOException {
            if (Files.isDirectory(point)) Files.delete(point); // Fails if anything was written to the mount point.
            Files.createSymbolicLink(point, share);
        }

        void unmount() throws IOException {
            Files.delete(point);
            Files.createDirectory(point);
        }
    }
}
