package org.stook.launcher;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The options that every way of starting a studio has. */
public final class StudioOptions {
    private static final int MOST_WORKERS = 64;
    private static final int MOST_PORT = 65535;
    private static final Pattern STATION = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,62}");
    private static final Pattern SETTING = Pattern.compile("[a-z][A-Za-z0-9.\\[\\]-]*=.*");
    private static final Pattern MEMORY = Pattern.compile("[1-9][0-9]*[mMgG]");

    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init") // set by the command line
    private CommandSpec spec;

    @Option(
            names = "--port",
            defaultValue = "8080",
            description = "TCP port of the service, 0 for any free one (${DEFAULT-VALUE})")
    private int port;

    @Option(
            names = "--address",
            defaultValue = "127.0.0.1",
            description = "address the service listens on; 0.0.0.0 opens it to the network (${DEFAULT-VALUE})")
    private String address = "127.0.0.1";

    @Option(names = "--workers", defaultValue = "2", description = "worker processes, 1 to 64 (${DEFAULT-VALUE})")
    private int workers;

    @Option(
            names = "--service-memory",
            paramLabel = "SIZE",
            defaultValue = "512m",
            description = "greatest heap of the service (${DEFAULT-VALUE})")
    private String serviceMemory = "512m";

    @Option(
            names = "--worker-memory",
            paramLabel = "SIZE",
            defaultValue = "2g",
            description = "greatest heap of each worker (${DEFAULT-VALUE})")
    private String workerMemory = "2g";

    @Option(names = "--service-jar", paramLabel = "FILE", description = "the service's jar (that of this source tree)")
    private @Nullable Path serviceJar;

    @Option(names = "--worker-jar", paramLabel = "FILE", description = "the worker's jar (that of this source tree)")
    private @Nullable Path workerJar;

    @Option(
            names = "--set",
            paramLabel = "KEY=VALUE",
            description = "a setting of the service or the workers, such as stook.intake.quiet=20s")
    private List<String> settings = new ArrayList<>();

    /**
     * The plan for this home.
     *
     * @param usual settings that those of the command line stand above
     *
     * @throws ParameterException if an option's value is out of its range
     * @throws LaunchFailure if a jar is missing
     */
    public StudioPlan plan(Path home, Map<String, Path> stations, List<String> usual) throws LaunchFailure {
        check(port >= 0 && port <= MOST_PORT, "--port must be 0 to " + MOST_PORT + ", got " + port);
        check(workers >= 1 && workers <= MOST_WORKERS, "--workers must be 1 to " + MOST_WORKERS + ", got " + workers);
        settings.forEach(s -> check(SETTING.matcher(s).matches(), "--set needs KEY=VALUE, got '" + s + "'"));
        checkMemory("--service-memory", serviceMemory);
        checkMemory("--worker-memory", workerMemory);
        Map<String, Path> folders = new LinkedHashMap<>();
        stations.forEach((name, folder) -> {
            check(
                    STATION.matcher(name).matches(),
                    "--station needs a name of letters, digits, - and _, got '" + name + "'");
            folders.put(name, folder.toAbsolutePath().normalize());
        });
        return new StudioPlan(
                home.toAbsolutePath().normalize(),
                address,
                port,
                workers,
                serviceMemory,
                workerMemory,
                folders,
                Stream.concat(usual.stream(), settings.stream()).toList(),
                Jars.find(serviceJar, workerJar));
    }

    private void checkMemory(String option, String size) {
        check(MEMORY.matcher(size).matches(), option + " needs a size such as 1500m or 4g, got '" + size + "'");
    }

    private void check(boolean right, String problem) {
        CommandLine line = spec.commandLine();
        if (!right) throw new ParameterException(line, problem);
    }
}
