package org.stook.trail.command;

import java.io.IOException;
import java.sql.SQLException;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Entry point of the runnable jar. */
@Command(
        name = "verify",
        description = "Checks audit trails and bags against heads that were kept elsewhere. Offline; reads only.",
        subcommands = {VerifyBag.class, VerifyTrail.class, ExportTrail.class, CommandLine.HelpCommand.class},
        mixinStandardHelpOptions = true)
public final class Main {
    static final int BAD = 3;
    static final int CANNOT_READ = 5;

    private Main() {}

    public static void main(String[] args) {
        System.exit(run(args));
    }

    /** @return the exit code */
    public static int run(String... args) {
        return new CommandLine(new Main())
                .setExecutionExceptionHandler((e, line, parsed) -> {
                    if (e instanceof IOException
                            || e instanceof SQLException
                            || e instanceof IllegalArgumentException) {
                        line.getErr().println("verify: " + e.getMessage());
                        line.getErr().flush();
                        return CANNOT_READ;
                    }
                    throw e;
                })
                .execute(args);
    }
}
