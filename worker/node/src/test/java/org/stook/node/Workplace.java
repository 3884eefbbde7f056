package org.stook.node;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.stook.migrations.Schema;
import org.stook.migrations.WorkingLogin;
import org.stook.node.publish.Durable;
import org.stook.orders.NewRun;
import org.stook.orders.Priorities;
import org.stook.orders.RunId;
import org.stook.orders.Runs;
import org.stook.orders.WorkOrder;
import org.stook.postgres.testing.TestDatabase;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;

/** A studio with two shares on disk, one mineral shot at one station, and worker processes started on demand. */
final class Workplace {
    private static final String SETTINGS = "cd".repeat(32);
    private static final int FRAMES = 5;
    /** Of the nodes, without the owner's rights. */
    private static final String LOGIN = "stook_work";

    private static final List<byte[]> SHOT = shot();

    final TestDatabase database;
    final HikariDataSource source = new HikariDataSource();
    final JdbcClient jdbc;
    final Path card;
    final Path wall;
    private final Path folder;

    Workplace(Class<?> test, Path folder) throws IOException {
        this.folder = folder;
        database = TestDatabase.filled(test, Schema::migrate);
        source.setJdbcUrl(database.url());
        source.setUsername(database.username());
        source.setPassword(database.password());
        source.setMaximumPoolSize(2);
        WorkingLogin.ensure(source, LOGIN, LOGIN);
        jdbc = JdbcClient.create(source);
        card = share("card", "INTAKE");
        wall = share("wall", "PUBLISH");
        jdbc.sql("insert into stook.tone_settings (id, body) values (?, '{}')")
                .param(SETTINGS)
                .update();
        jdbc.sql("insert into stook.station (name, intake_share_id, intake_folder, publish_share_id, publish_folder)"
                        + " values ('north', 1, 'north', 2, 'done')")
                .update();
    }

    private Path share(String name, String kind) throws IOException {
        Path root = Files.createDirectories(folder.resolve(name));
        UUID sentinel = jdbc.sql("insert into stook.share (name, kind, root) values (?, ?, ?) returning sentinel")
                .params(name, kind, root.toString())
                .query(UUID.class)
                .single();
        Files.writeString(root.resolve(WorkOrder.Share.SENTINEL), sentinel + "\n");
        return root;
    }

    private static List<byte[]> shot() {
        Bracket bracket = Bracket.of(Subjects.named("mineral", 3), BracketPlan.of(240, 160, FRAMES, 3));
        BracketWriter writer = new BracketWriter(
                bracket, FrameFormat.JPEG, Camera.USUAL, OffsetDateTime.parse("2026-03-02T09:00:00+01:00"));
        List<byte[]> frames = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            frames.add(writer.frame(i));
        }
        return frames;
    }

    /** A waiting run of the mineral. */
    RunId run() throws IOException {
        return run(SHOT);
    }

    /** A waiting run whose second file is no picture at all, and was none at intake. */
    RunId runWithAnUnreadableFrame() throws IOException {
        List<byte[]> frames = new ArrayList<>(SHOT);
        frames.set(1, "no picture".getBytes(StandardCharsets.US_ASCII));
        return run(frames);
    }

    private RunId run(List<byte[]> frames) throws IOException {
        long stack = jdbc.sql("insert into stook.stack (station_id, subject) values (1, 'Fluorite 7') returning id")
                .query(Long.class)
                .single();
        for (int i = 0; i < frames.size(); i++) {
            Path file = frame(stack, i);
            Files.createDirectories(file.getParent());
            Files.write(file, frames.get(i));
            addFrame(stack, i, Durable.sha256(file));
        }
        jdbc.sql("update stook.stack set state = 'SEALED', manifest_sha256 = lpad(to_hex(id), 64, '0') where id = ?")
                .param(stack)
                .update();
        return new Runs(source, new DataSourceTransactionManager(source))
                .create(new NewRun(stack, SETTINGS, Priorities.NORMAL, "ada"));
    }

    private void addFrame(long stack, int ordinal, String sha256) {
        jdbc.sql(
                        "insert into stook.frame (sha256, bytes, format, width, height, bits) values (?, 9, 'jpeg', 240, 160, 8)"
                                + " on conflict do nothing")
                .param(sha256)
                .update();
        jdbc.sql("insert into stook.stack_frame (stack_id, ordinal, sha256, share_id, rel_path) values (?, ?, ?, 1, ?)")
                .params(
                        stack,
                        ordinal,
                        sha256,
                        card.relativize(frame(stack, ordinal)).toString())
                .update();
    }

    Path frame(long stack, int ordinal) {
        return card.resolve("north/" + stack + "/HC_000" + (ordinal + 1) + ".jpg");
    }

    long stackOf(RunId run) {
        return jdbc.sql("select stack_id from stook.run where id = ?")
                .param(run.value())
                .query(Long.class)
                .single();
    }

    /** A node in this JVM whose own scheduler is at rest: the test turns the crank. */
    ConfigurableApplicationContext node(String id) {
        ConfigurableApplicationContext node = new SpringApplicationBuilder(NodeApplication.class)
                .run(arguments(id).toArray(String[]::new));
        node.getBean(Scheduler.class).stop();
        return node;
    }

    /** A node in a JVM of its own. */
    Process process(String id, String failpoint) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-Djava.awt.headless=true",
                "-Dstook.failpoint=" + failpoint,
                "-cp",
                System.getProperty("java.class.path"),
                NodeApplication.class.getName()));
        arguments(id).forEach(command::add);
        return new ProcessBuilder(command).redirectErrorStream(true).start();
    }

    private Stream<String> arguments(String id) {
        return Map.of(
                        "spring.datasource.url",
                        database.url(),
                        "spring.datasource.username",
                        LOGIN,
                        "spring.datasource.password",
                        LOGIN,
                        "stook.worker.id",
                        id,
                        "stook.worker.threads",
                        "1",
                        "stook.worker.rehearse",
                        "false",
                        "stook.worker.scratch",
                        folder.resolve("scratch").toString())
                .entrySet()
                .stream()
                .map(e -> "--" + e.getKey() + "=" + e.getValue());
    }

    /** All files below the output folder, relative to the share. */
    List<String> published() {
        try (Stream<Path> files = Files.walk(wall.resolve("done"))) {
            return files.filter(Files::isRegularFile)
                    .map(f -> wall.relativize(f).toString())
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String value(String sql) {
        return String.valueOf(jdbc.sql(sql).query().singleValue());
    }

    String state(RunId run) {
        return value("select state from stook.run where id = " + run);
    }

    /** Kinds of the audit entries on the run, oldest first. */
    List<String> trail(RunId run) {
        return jdbc.sql("select kind from stook.audit_entry where subject = ? order by id")
                .param("run/" + run)
                .query(String.class)
                .list();
    }
}
