package org.stook.studioday;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * What comes of the day: a worker publishes stacks of it, another process makes each composite again from its record with another
 * number of threads, and a bag is pulled and verified against the heads that lie beside the publications.
 */
final class Afterwards {
    private static final Duration PATIENCE = Duration.ofMinutes(20);
    private static final String THREADS_THEN = "1";
    private static final String THREADS_NOW = "3";

    private final Trial trial;
    private final DrillOptions options;
    private final int wanted;

    /** @param wanted how many publications */
    Afterwards(Trial trial, DrillOptions options, int wanted) {
        this.trial = trial;
        this.options = options;
        this.wanted = wanted;
    }

    private record Published(long run, Path record) {}

    List<Line> lines() throws IOException, SQLException, InterruptedException {
        List<Published> published = publish();
        int same = 0;
        for (Published one : published) {
            if (repeat(one.record())) same++;
        }
        String all = wanted + " of " + wanted;
        List<Line> lines = new ArrayList<>();
        lines.add(new Line(
                "made again by another process, %s threads for %s, byte for byte".formatted(THREADS_NOW, THREADS_THEN),
                same + " of " + published.size(),
                all,
                same == wanted && published.size() == wanted));
        if (!published.isEmpty()) lines.add(verify(published.get(0).run()));
        return lines;
    }

    private List<Published> publish() throws IOException, SQLException, InterruptedException {
        Process worker = start("worker.log", trial.worker(options.worker(), THREADS_THEN));
        try {
            long until = System.nanoTime() + PATIENCE.toNanos();
            List<Published> published = published();
            while (published.size() < wanted && worker.isAlive() && System.nanoTime() < until) {
                Thread.sleep(1000);
                published = published();
            }
            return published;
        } finally {
            worker.destroy();
            worker.waitFor();
        }
    }

    private List<Published> published() throws SQLException {
        List<Published> found = new ArrayList<>();
        try (Connection connection = trial.connect();
                PreparedStatement query = connection.prepareStatement("""
                        select p.run_id, s.root, f ->> 'name' from stook.publication p join stook.share s on s.id = p.share_id,
                          jsonb_array_elements(p.files) f where f ->> 'kind' = 'record' order by p.run_id limit ?""")) {
            query.setInt(1, wanted);
            try (ResultSet row = query.executeQuery()) {
                while (row.next()) {
                    found.add(new Published(
                            row.getLong(1), Path.of(row.getString(2)).resolve(row.getString(3))));
                }
            }
        }
        return found;
    }

    private boolean repeat(Path record) throws IOException, InterruptedException {
        return run(
                        "repeat.log",
                        "java",
                        "-Djava.awt.headless=true",
                        "-jar",
                        options.imaging().toString(),
                        "repeat",
                        record.toString(),
                        "--frames",
                        options.home().toString(),
                        "--threads",
                        THREADS_NOW)
                == 0;
    }

    /** The bag as it is pulled, unpacked by the system's tar, checked by the command that an archivist has. */
    private Line verify(long run) throws IOException, InterruptedException {
        Path tar = options.home().resolve("bag.tar");
        try (InputStream bag =
                trial.service().stream("/api/archive/publications/" + run + "/bag.tar?frames=included")) {
            Files.copy(bag, tar, StandardCopyOption.REPLACE_EXISTING);
        }
        Path folder = Files.createDirectories(options.home().resolve("bag"));
        int unpacked = run("tar.log", "tar", "-xf", tar.toString(), "-C", folder.toString(), "--strip-components=1");
        // The heads are laid out every ten seconds.
        Thread.sleep(Duration.ofSeconds(12).toMillis());
        Path kept = options.home().resolve("published/stook-audit");
        int verified = run(
                "verify.log",
                "java",
                "-jar",
                options.verify().toString(),
                "bag",
                folder.toString(),
                "--heads",
                kept.resolve("heads.jsonl").toString());
        List<String> said = Files.readAllLines(options.home().resolve("verify.log"), StandardCharsets.UTF_8);
        long bad = said.stream().filter(line -> line.startsWith("BAD")).count();
        return new Line(
                "a pulled bag, unpacked and verified offline: lines said, bad ones",
                said.size() + ", " + bad,
                "no bad one",
                unpacked == 0 && verified == 0 && bad == 0);
    }

    private int run(String log, String... command) throws IOException, InterruptedException {
        return start(log, List.of(command)).waitFor();
    }

    private Process start(String log, List<String> command) throws IOException {
        List<String> words = new ArrayList<>(command);
        if (words.get(0).equals("java")) {
            words.set(0, Path.of(System.getProperty("java.home"), "bin", "java").toString());
        }
        return new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        options.home().resolve(log).toFile()))
                .start();
    }
}
