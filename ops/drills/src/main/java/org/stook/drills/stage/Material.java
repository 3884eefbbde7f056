package org.stook.drills.stage;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;

/** Frames on the intake share and sealed stacks of them. */
public final class Material {
    private static final int FRAMES = 5;
    /** Pixels of a frame. */
    private static final int MOST_RENDERED = 25_000_000;

    private static final int TIMES = 6;

    private final Path card;
    private final JdbcClient jdbc;
    private final int width;
    private final int height;

    Material(Path card, JdbcClient jdbc, int width, int height) {
        this.card = card;
        this.jdbc = jdbc;
        this.width = width;
        this.height = height;
    }

    /** Five frames of a mineral; very large ones are enlarged from smaller. */
    public List<byte[]> mineral() {
        int smaller = (long) width * height > MOST_RENDERED ? TIMES : 1;
        Bracket bracket =
                Bracket.of(Subjects.named("mineral", 3), BracketPlan.of(width / smaller, height / smaller, FRAMES, 3));
        BracketWriter writer = new BracketWriter(
                bracket, FrameFormat.JPEG, Camera.USUAL, OffsetDateTime.parse("2026-03-02T09:00:00+01:00"));
        List<byte[]> frames = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            byte[] frame = writer.frame(i);
            frames.add(smaller == 1 ? frame : Enlarged.of(frame, width, height, i));
        }
        return frames;
    }

    /** Lays frames down in a folder of their own, as intake found them. */
    public List<String> lay(String folder, List<byte[]> frames) throws IOException {
        List<String> paths = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            Path file = card.resolve(folder).resolve("HC_%04d.jpg".formatted(i + 1));
            Files.createDirectories(card.resolve(folder));
            Files.write(file, frames.get(i));
            jdbc.sql("insert into stook.frame (sha256, bytes, format, width, height, bits)"
                            + " values (?, ?, 'jpeg', ?, ?, 8) on conflict do nothing")
                    .params(sha256(frames.get(i)), Math.max(1, frames.get(i).length), width, height)
                    .update();
            paths.add(card.relativize(file).toString());
        }
        return paths;
    }

    /** A sealed stack of frames that were laid down. */
    public long stack(String subject, List<String> paths) throws IOException {
        long stack = jdbc.sql("insert into stook.stack (station_id, subject) values (1, ?) returning id")
                .param(subject)
                .query(Long.class)
                .single();
        for (int i = 0; i < paths.size(); i++) {
            jdbc.sql("insert into stook.stack_frame (stack_id, ordinal, sha256, share_id, rel_path)"
                            + " values (?, ?, ?, 1, ?)")
                    .params(stack, i, sha256(Files.readAllBytes(card.resolve(paths.get(i)))), paths.get(i))
                    .update();
        }
        jdbc.sql("update stook.stack set state = 'SEALED', manifest_sha256 = lpad(to_hex(id), 64, '0') where id = ?")
                .param(stack)
                .update();
        return stack;
    }

    /** Of its own kind: a file that only claims to be a frame. */
    public static byte[] cut(byte[] frame, double share) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(frame, 0, (int) (frame.length * share));
        return out.toByteArray();
    }

    public static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
