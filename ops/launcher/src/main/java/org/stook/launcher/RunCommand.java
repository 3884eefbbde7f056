package org.stook.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Starts a studio and keeps it until it is stopped. */
@Command(
        name = "run",
        sortOptions = false,
        description = "Starts PostgreSQL, the service and its workers, and keeps them until Ctrl-C.")
final class RunCommand implements Callable<Integer> {
    private static final String USUAL_STATION = "table-1";

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line
    private CommandSpec spec;

    @Option(names = "--home", paramLabel = "DIR", required = true, description = "folder of everything; made if absent")
    @SuppressWarnings("NullAway.Init") // required
    private Path home;

    @Option(
            names = "--station",
            paramLabel = "NAME=FOLDER",
            description = "a station and the folder its frames arrive in, as often as there are stations" + " ("
                    + USUAL_STATION + "=DIR/intake/" + USUAL_STATION + ")")
    private Map<String, Path> stations = new LinkedHashMap<>();

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "this text")
    private boolean help;

    @Mixin
    private StudioOptions options = new StudioOptions();

    @Override
    public Integer call() throws IOException, InterruptedException {
        if (stations.isEmpty()) {
            stations.put(USUAL_STATION, home.resolve("intake").resolve(USUAL_STATION));
        }
        PrintWriter out = spec.commandLine().getOut();
        return new Session(options.plan(home, stations, List.of()), out::println).run(studio -> {
            StudioPlan plan = studio.plan();
            plan.stations().forEach((name, folder) -> out.println("station " + name + " takes frames from " + folder));
            out.println("composites go to " + plan.published());
            studio.wayIn().forEach(out::println);
            out.println("Ctrl-C stops all");
            studio.serve();
            return ExitCode.ENDED;
        });
    }
}
