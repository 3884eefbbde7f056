package org.stook.drills.stage;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Commands of the system. */
public final class Processes {
    private Processes() {}

    /** Sends a signal by its name. */
    public static void signal(String name, long pid) throws IOException, InterruptedException {
        run("kill", "-" + name, Long.toString(pid));
    }

    /** @return the exit code; 127 if there is no such command */
    public static int run(String... command) throws InterruptedException {
        try {
            return new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start()
                    .waitFor();
        } catch (IOException e) {
            return 127;
        }
    }

    /**
     * Runs to the end.
     *
     * @throws IOException with the command's words if it fails
     */
    public static void must(List<String> command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String words = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IOException(String.join(" ", command) + " ended with " + process.exitValue() + ": " + words);
        }
    }
}
