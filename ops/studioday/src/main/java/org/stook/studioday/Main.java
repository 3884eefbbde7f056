package org.stook.studioday;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The command line of the intake's drills. */
@Command(
        name = "intake-drill",
        mixinStandardHelpOptions = true,
        synopsisSubcommandLabel = "COMMAND",
        description =
                "Drives the intake of a real service, with a real database, and holds what it did against what was done to it.",
        subcommands = {DayCommand.class, FaultsCommand.class, RateCommand.class, VerdictCommand.class})
final class Main {
    private Main() {}

    public static void main(String[] arguments) {
        System.exit(new CommandLine(new Main()).execute(arguments));
    }
}
