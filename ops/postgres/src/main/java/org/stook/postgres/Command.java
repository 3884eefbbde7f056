package org.stook.postgres;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Short commands of the system, run to their end. */
final class Command {
    private Command() {}

    /** The exit code; output is thrown away. A command that is not installed counts as 127, as in a shell. */
    static int exitOf(String... command) {
        try {
            return new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start()
                    .waitFor();
        } catch (IOException e) {
            return 127;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return 130;
        }
    }

    /** Standard output without surrounding blanks. */
    static String outputOf(String... command) throws IOException {
        Process process = new ProcessBuilder(command).start();
        return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).trim();
    }

    /** The exit code; output is appended to the log. */
    static int exitOf(List<String> command, Path log) throws IOException {
        try {
            return logged(command, log).start().waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new PostgresUnavailable("interrupted while running " + command.get(command.size() - 1), e);
        }
    }

    static ProcessBuilder logged(List<String> command, Path log) {
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
    }

    static List<String> concat(List<String> prefix, List<String> rest) {
        List<String> all = new ArrayList<>(prefix);
        all.addAll(rest);
        return all;
    }
}
