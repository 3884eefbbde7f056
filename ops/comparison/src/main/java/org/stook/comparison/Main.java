package org.stook.comparison;

import java.io.IOException;
import org.stook.comparison.command.AgainCommand;
import org.stook.comparison.command.ChecksCommand;
import org.stook.comparison.command.CostsCommand;
import org.stook.comparison.command.GapsCommand;
import org.stook.comparison.command.GrowthCommand;
import org.stook.comparison.command.KernelsCommand;
import org.stook.comparison.command.LytroCommand;
import org.stook.comparison.command.OfficeCommand;
import org.stook.comparison.command.RealCommand;
import org.stook.comparison.command.ReferenceCommand;
import org.stook.comparison.command.SpeedCommand;
import org.stook.comparison.command.TruthCommand;
import org.stook.comparison.command.UnrulyCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The command line of the bench. */
@Command(
        name = "bench",
        mixinStandardHelpOptions = true,
        synopsisSubcommandLabel = "COMMAND",
        description = "Holds Stook against a straightforward pipeline, the truth and published scores.",
        subcommands = {
            TruthCommand.class,
            UnrulyCommand.class,
            OfficeCommand.class,
            LytroCommand.class,
            RealCommand.class,
            ChecksCommand.class,
            SpeedCommand.class,
            GrowthCommand.class,
            KernelsCommand.class,
            CostsCommand.class,
            GapsCommand.class,
            ReferenceCommand.class,
            AgainCommand.class,
            CommandLine.HelpCommand.class
        })
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        CommandLine line = new CommandLine(new Main());
        line.setExecutionExceptionHandler((failure, command, parsed) -> {
            // A missing folder needs its message only; anything else is a fault of the bench and shows where.
            if (failure instanceof IOException) System.err.println(failure.getMessage());
            else failure.printStackTrace();
            return 1;
        });
        System.exit(line.execute(args));
    }
}
