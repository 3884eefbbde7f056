package org.stook.imaging.command;

import org.stook.imaging.composite.EngineVersion;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;

/** Entry point of the runnable jar. */
@Command(
        name = "stook-imaging",
        description = "Makes one sharp composite of the frames of a focus bracket.",
        subcommands = {Compose.class, Repeat.class, CommandLine.HelpCommand.class},
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class)
public final class Main {
    private Main() {}

    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"Stook imaging " + EngineVersion.current()};
        }
    }

    public static void main(String[] args) {
        System.exit(run(args));
    }

    /** @return the exit code */
    static int run(String... args) {
        return new CommandLine(new Main())
                .setExecutionExceptionHandler((e, line, parsed) -> Complaints.report(e, line))
                .execute(args);
    }
}
