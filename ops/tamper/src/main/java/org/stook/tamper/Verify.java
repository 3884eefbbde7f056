package org.stook.tamper;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.stook.postgres.LocalPostgres;

/** The command verify as a process of its own, in little memory. */
record Verify(Path jar, LocalPostgres postgres) {
    /** @param seconds of the whole process */
    record Said(int exit, String text, double seconds) {
        List<String> bad() {
            return text.lines().filter(line -> line.startsWith("BAD")).toList();
        }

        boolean names(String what) {
            return bad().stream().anyMatch(line -> line.contains(what));
        }
    }

    /**
     * @param kept folder with heads, leaves and key
     * @param more options
     */
    Said database(String database, Path kept, String... more) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx64m",
                "-jar",
                jar.toString(),
                "trail",
                "--database",
                postgres.url(database),
                "--user",
                postgres.username()));
        for (String option : List.of("heads:heads.jsonl", "leaves:leaves.txt", "key:key.pem")) {
            String[] parts = option.split(":");
            command.addAll(List.of("--" + parts[0], kept.resolve(parts[1]).toString()));
        }
        command.addAll(List.of(more));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("PGPASSWORD", postgres.password());
        long start = System.nanoTime();
        Process process = builder.start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int exit = process.waitFor();
        return new Said(exit, text, (System.nanoTime() - start) / 1e9);
    }
}
