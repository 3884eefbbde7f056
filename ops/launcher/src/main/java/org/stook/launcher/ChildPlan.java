package org.stook.launcher;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.stook.postgres.Keeper;

/**
 * A Java program to run beside this one.
 *
 * @param name what it is called in messages and what its log file is named after
 * @param jar the program
 * @param memory greatest heap, as Java's {@code -Xmx} takes it
 * @param arguments of the program; visible to every user of the machine
 * @param environment added to this process's own; the place for passwords
 * @param log file that takes its output
 */
record ChildPlan(
        String name,
        Path jar,
        List<String> javaOptions,
        List<String> arguments,
        Map<String, String> environment,
        Path log) {
    private static final long LONG_LOG = 10L << 20;
    private static final int LINES_SHOWN = 12;

    /** Starts it; the kernel kills it when this process dies, however that comes. */
    Process start() throws IOException {
        turnLog();
        ProcessBuilder builder = new ProcessBuilder(command())
                .redirectErrorStream(true)
                .redirectInput(ProcessBuilder.Redirect.from(new File("/dev/null")))
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
        builder.environment().putAll(environment);
        return Keeper.start(builder, name);
    }

    private List<String> command() {
        // A session of its own keeps Ctrl-C for this process alone, which then stops the others in order. KILL, because
        // the database goes at the same moment: nothing is left that a farewell could be written to.
        List<String> command = new ArrayList<>(List.of("setsid", "setpriv", "--pdeathsig", "KILL"));
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(javaOptions);
        command.addAll(List.of("-XX:+ExitOnOutOfMemoryError", "-jar", jar.toString()));
        command.addAll(arguments);
        return command;
    }

    private void turnLog() throws IOException {
        if (Files.exists(log) && Files.size(log) > LONG_LOG) {
            Files.move(log, log.resolveSibling(log.getFileName() + ".old"), StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** The last lines of the log, for a message. */
    String logEnd() {
        try {
            List<String> lines = Files.readAllLines(log);
            return String.join("\n  ", lines.subList(Math.max(0, lines.size() - LINES_SHOWN), lines.size()));
        } catch (IOException e) {
            return "(unreadable: " + e.getMessage() + ")";
        }
    }
}
