package org.stook.app.archive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;

/** An invented studio with real files that publishes without a worker: a few bytes stand for each picture. */
public final class PublishedStudio {
    private static final String SETTINGS = "cd".repeat(32);
    private static final int FRAMES = 3;
    private static final String SCORE = """
            {"total": %d, "verdict": "%s", "parts": [{"name": "sharpness", "verdict": "ACCEPT", "sentence": "Sharp <from> front to back."}]}""";

    private final JdbcClient jdbc;
    private final Path card;
    private final Path wall;

    public PublishedStudio(JdbcClient jdbc, Path folder) {
        this.jdbc = jdbc;
        this.card = share("card", "INTAKE", folder);
        this.wall = share("wall", "PUBLISH", folder);
        jdbc.sql("insert into stook.tone_settings (id, body) values (?, '{\"blend\": \"region\"}')")
                .param(SETTINGS)
                .update();
        for (String station : new String[] {"north", "south"}) {
            jdbc.sql(
                            "insert into stook.station (name, intake_share_id, intake_folder, publish_share_id) values (?, 1, ?, 2)")
                    .params(station, station)
                    .update();
        }
    }

    private Path share(String name, String kind, Path folder) {
        Path root = folder.resolve(name);
        jdbc.sql("insert into stook.share (name, kind, root) values (?, ?, ?)")
                .params(name, kind, root.toString())
                .update();
        return root;
    }

    /** Shoots and publishes a subject. @return the run */
    public long publish(String subject, int score) {
        return publish(subject, "north", score, score >= 80 ? "ACCEPT" : "LOOK");
    }

    public long publish(String subject, String station, int score, String verdict) {
        long stack = id(jdbc.sql(
                        "insert into stook.stack (station_id, subject) select id, ? from stook.station where name = ? returning id")
                .params(subject, station));
        for (int i = 0; i < FRAMES; i++) frame(stack, i);
        jdbc.sql("update stook.stack set state = 'SEALED', manifest_sha256 = lpad(to_hex(id), 64, '0') where id = ?")
                .param(stack)
                .update();
        long run = id(
                jdbc.sql("insert into stook.run (stack_id, settings_id, created_by) values (?, ?, 'ada') returning id")
                        .params(stack, SETTINGS));
        jdbc.sql("update stook.run set state = 'RUNNING', attempt = 1 where id = ?")
                .param(run)
                .update();
        jdbc.sql("insert into stook.attempt (run_id, n, engine_version) values (?, 1, '0.1.0')")
                .param(run)
                .update();
        String name = "done/" + subject.replaceAll("[^A-Za-z0-9]+", "-") + "/" + run + "-abab";
        String sha256 = write(wall.resolve(name + ".tif"), ("master of " + subject + run).repeat(400));
        jdbc.sql("update stook.run set state = 'PUBLISHING', result_sha256 = ?, result_name = ? where id = ?")
                .params(sha256, name + ".tif", run)
                .update();
        jdbc.sql("update stook.run set state = 'PUBLISHED', score = cast(? as jsonb), verdict = ? where id = ?")
                .params(SCORE.formatted(score, verdict), verdict, run)
                .update();
        jdbc.sql("""
                        insert into stook.publication (run_id, attempt, stack_id, share_id, name, sha256, bytes, engine_version, files)
                        values (?, 1, ?, 2, ?, ?, ?, '0.1.0', cast(? as jsonb))""")
                .params(
                        run,
                        stack,
                        name + ".tif",
                        sha256,
                        wall.resolve(name + ".tif").toFile().length(),
                        files(name))
                .update();
        return run;
    }

    private void frame(long stack, int ordinal) {
        String name = "north/%d/\u00c4_%04d.jpg".formatted(stack, ordinal + 1);
        String sha256 = write(card.resolve(name), "frame " + ordinal + " of " + stack);
        jdbc.sql("""
                        insert into stook.frame (sha256, bytes, format, width, height, bits, captured_at)
                        values (?, ?, 'jpeg', 240, 160, 8, timestamp '2026-03-02 09:00:00' + ? * interval '1 second')""")
                .params(sha256, card.resolve(name).toFile().length(), ordinal)
                .update();
        jdbc.sql("insert into stook.stack_frame (stack_id, ordinal, sha256, share_id, rel_path) values (?, ?, ?, 1, ?)")
                .params(stack, ordinal, sha256, name)
                .update();
    }

    private String files(String name) {
        Map<String, String> beside = new TreeMap<>(Map.of(
                "thumbnail", ".thumb.jpg",
                "derivative", ".jpg",
                "source-map", ".source.tif",
                "record", ".json",
                "tiles", ".tiles/info.json"));
        write(wall.resolve(name + ".tiles/0,0,512,512/512,512/0/default.jpg"), "a tile");
        ArrayNode files = JsonMapper.shared().createArrayNode();
        beside.forEach((kind, ending) -> {
            String text = switch (kind) {
                case "record" -> "{\"commonArea\": {\"width\": 1200, \"height\": 800}}";
                case "tiles" -> "{\"type\": \"ImageService3\", \"id\": \"here\"}";
                default -> kind;
            };
            Path file = wall.resolve(name + ending);
            String sha256 = write(file, text);
            files.addObject()
                    .put("name", name + ending)
                    .put("sha256", sha256)
                    .put("bytes", file.toFile().length())
                    .put("kind", kind);
        });
        return files.toString();
    }

    /** Where the master of a run lies. */
    public Path master(long run) {
        return wall.resolve(jdbc.sql("select name from stook.publication where run_id = ?")
                .param(run)
                .query(String.class)
                .single());
    }

    private static long id(JdbcClient.StatementSpec sql) {
        return sql.query(Long.class).single();
    }

    private static String write(Path file, String text) {
        try {
            Files.createDirectories(file.getParent());
            Files.writeString(file, text);
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
