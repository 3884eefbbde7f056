package org.stook.drills;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.stook.drills.archive.BagCommand;
import org.stook.drills.archive.PullCommand;
import org.stook.drills.check.Result;
import org.stook.drills.desk.DeskCommand;
import org.stook.drills.desk.TilesCommand;
import org.stook.drills.drill.Conductor;
import org.stook.drills.drill.Drill;
import org.stook.drills.drill.Drills;
import org.stook.drills.drill.UpgradeCommand;
import org.stook.drills.scale.CancelCommand;
import org.stook.drills.scale.OverheadCommand;
import org.stook.drills.scale.ScaleCommand;
import org.stook.drills.scale.TwoWorkersCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The command line of the drills. */
@Command(
        name = "drill",
        mixinStandardHelpOptions = true,
        subcommands = {
            ScaleCommand.class,
            OverheadCommand.class,
            TwoWorkersCommand.class,
            CancelCommand.class,
            UpgradeCommand.class,
            PullCommand.class,
            BagCommand.class,
            DeskCommand.class,
            TilesCommand.class
        },
        description =
                "Breaks a studio of real worker processes in known ways and checks what its history says afterwards."
                        + " Without a name it lists the drills.")
public final class Main implements Callable<Integer> {
    @Parameters(paramLabel = "NAME", description = "drills to run, or 'all'", arity = "0..*")
    private List<String> names = List.of();

    @Option(names = "--seed", defaultValue = "1", description = "of all chance (${DEFAULT-VALUE})")
    private long seed;

    @Option(names = "--runs", defaultValue = "60", description = "how many runs each drill orders (${DEFAULT-VALUE})")
    private int runs;

    @Option(
            names = "--patience",
            defaultValue = "1200",
            description = "seconds until a drill is given up (${DEFAULT-VALUE})")
    private long patience;

    private Main() {}

    public static void main(String[] args) {
        CommandLine line = new CommandLine(new Main());
        line.setExecutionExceptionHandler((failure, command, parsed) -> {
            // A missing file needs its message only; anything else is a fault of the drills and shows where.
            if (failure instanceof IOException) System.err.println(failure.getMessage());
            else failure.printStackTrace();
            return 1;
        });
        System.exit(line.execute(args));
    }

    @Override
    public Integer call() throws Exception {
        if (names.isEmpty()) {
            Drills.all().forEach(d -> System.out.printf("%-12s %s%n", d.name(), d.purpose()));
            return 0;
        }
        Conductor conductor = new Conductor(
                Path.of(System.getProperty("stook.drills.work")),
                Path.of(System.getProperty("stook.node.jar")),
                patience);
        List<Result> results = new ArrayList<>();
        for (Drill drill : chosen()) {
            System.err.println("drill " + drill.name() + ": " + drill.purpose());
            results.add(conductor.run(drill, runs, seed));
            Table.print(results, System.out);
        }
        return results.stream().allMatch(Result::sound) ? 0 : 2;
    }

    private List<Drill> chosen() throws IOException {
        if (names.equals(List.of("all"))) {
            return Drills.all();
        }
        List<Drill> chosen = new ArrayList<>();
        for (String name : names) {
            chosen.add(Drills.all().stream()
                    .filter(d -> d.name().equals(name))
                    .findFirst()
                    .orElseThrow(
                            () -> new IOException("there is no drill '" + name + "'; without a name they are listed")));
        }
        return chosen;
    }
}
