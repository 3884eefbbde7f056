package org.stook.launcher.demo;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stook.launcher.ExitCode;
import org.stook.launcher.Session;
import org.stook.launcher.Studio;
import org.stook.launcher.StudioOptions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Shows the whole job on generated frames. */
@Command(
        name = "demo",
        sortOptions = false,
        description = "Starts a studio, shoots three generated pieces into it and shows their composites published.")
public final class DemoCommand implements Callable<Integer> {
    private static final String STATION = "harrow";
    private static final Pattern SIZE = Pattern.compile("([1-9][0-9]{2,4})x([1-9][0-9]{2,4})");

    /** Nobody likes to watch a service wait for the rest of a file that will never come. */
    private static final List<String> IMPATIENT =
            List.of("stook.intake.quiet=5s", "stook.intake.grace=15s", "stook.intake.settle=1s");

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line
    private CommandSpec spec;

    @Option(
            names = "--home",
            paramLabel = "DIR",
            defaultValue = "studio",
            description = "folder of everything; made if absent (${DEFAULT-VALUE})")
    private Path home = Path.of("studio");

    @Option(
            names = "--seconds-per-frame",
            paramLabel = "S",
            defaultValue = "0.5",
            description = "pace of the camera, 0 to 60 (${DEFAULT-VALUE})")
    private double secondsPerFrame;

    @Option(
            names = "--size",
            paramLabel = "WxH",
            defaultValue = "1200x800",
            description = "pixels of a frame (${DEFAULT-VALUE})")
    private String size = "1200x800";

    @Option(names = "--frames", defaultValue = "12", description = "frames in each sweep, 3 to 60 (${DEFAULT-VALUE})")
    private int frames;

    @Option(
            names = "--time-limit",
            paramLabel = "S",
            defaultValue = "240",
            description = "seconds to wait for the composites after the last frame (${DEFAULT-VALUE})")
    private int timeLimit;

    @Option(
            names = "--stay",
            negatable = true,
            description = "keep serving until Ctrl-C (yes on a terminal, no otherwise)")
    private @Nullable Boolean stay;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "this text")
    private boolean help;

    @Mixin
    private StudioOptions options = new StudioOptions();

    @Override
    public Integer call() throws IOException, InterruptedException {
        Instant begin = Instant.now();
        PrintWriter out = spec.commandLine().getOut();
        Consumer<String> say = line -> out.println(line.isEmpty() ? "" : sinceThen(begin) + line);
        Path intake = home.resolve("intake").resolve(STATION).toAbsolutePath();
        List<Shoot> shoots = programme().shoots(intake);
        return new Session(options.plan(home, Map.of(STATION, intake), IMPATIENT), say)
                .run(studio -> show(studio, shoots, say));
    }

    private int show(Studio studio, List<Shoot> shoots, Consumer<String> say) throws IOException, InterruptedException {
        studio.wayIn().forEach(say);
        Duration pace = Duration.ofMillis((long) (secondsPerFrame * 1000));
        boolean all = new Demo(studio, shoots, say).run(pace, Duration.ofSeconds(timeLimit));
        say.accept("");
        say.accept(
                all
                        ? "all " + shoots.size() + " composites are published"
                        : "not all composites were published within " + timeLimit + " s; the logs are in "
                                + home.resolve("logs"));
        if (stays()) {
            studio.wayIn().forEach(say);
            say.accept("Ctrl-C stops all");
            studio.serve();
        }
        return all ? ExitCode.ENDED : ExitCode.NOT_PUBLISHED;
    }

    private Programme programme() {
        Matcher given = SIZE.matcher(size);
        check(given.matches(), "--size needs pixels such as 1200x800, got '" + size + "'");
        check(frames >= 3 && frames <= 60, "--frames must be 3 to 60, got " + frames);
        check(
                secondsPerFrame >= 0 && secondsPerFrame <= 60,
                "--seconds-per-frame must be 0 to 60, got " + secondsPerFrame);
        check(timeLimit > 0, "--time-limit must be above 0, got " + timeLimit);
        return new Programme(Integer.parseInt(given.group(1)), Integer.parseInt(given.group(2)), frames);
    }

    private void check(boolean right, String problem) {
        if (!right) throw new ParameterException(spec.commandLine(), problem);
    }

    private boolean stays() {
        return stay == null ? isTerminal(0) && isTerminal(1) : stay;
    }

    private static boolean isTerminal(int descriptor) {
        try {
            String target = Files.readSymbolicLink(Path.of("/proc/self/fd/" + descriptor))
                    .toString();
            return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty") || target.equals("/dev/console");
        } catch (IOException e) {
            return false;
        }
    }

    private static String sinceThen(Instant begin) {
        return String.format(
                Locale.ROOT, "%5.1f s  ", Duration.between(begin, Instant.now()).toMillis() / 1000.0);
    }
}
