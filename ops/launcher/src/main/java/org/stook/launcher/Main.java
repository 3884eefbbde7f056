package org.stook.launcher;

import java.io.IOException;
import org.stook.launcher.demo.DemoCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command line of the standalone launcher. */
@Command(
        name = "stook-launcher",
        description = "Runs a whole focus-stacking studio on this machine.",
        subcommands = {RunCommand.class, DemoCommand.class},
        exitCodeListHeading = "Exit codes:%n",
        exitCodeList = {
            "0:what was asked for is done",
            "1:could not start or not go on; the last line says why",
            "2:wrong command line",
            "3:the demo's composites were not all published in time",
            "130, 143:stopped by Ctrl-C or SIGTERM, after everything had ended"
        })
public final class Main implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "this text")
    private boolean help;

    public static void main(String[] args) {
        System.exit(commandLine().execute(args));
    }

    static CommandLine commandLine() {
        return new CommandLine(new Main())
                .setParameterExceptionHandler((problem, arguments) -> {
                    CommandLine line = problem.getCommandLine();
                    line.getErr().println("stook: " + problem.getMessage());
                    line.getErr().println("See " + line.getCommandSpec().qualifiedName() + " --help");
                    return ExitCode.USAGE;
                })
                .setExecutionExceptionHandler((problem, line, parsed) -> {
                    if (!(problem instanceof IOException)) throw problem;
                    line.getErr().println("stook: " + problem.getMessage());
                    return ExitCode.FAILED;
                });
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "say what to do: run or demo");
    }
}
