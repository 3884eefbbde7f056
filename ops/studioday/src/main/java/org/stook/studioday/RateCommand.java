package org.stook.studioday;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.bracket.Rig;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.Capture;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.file.FrameWriter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A burst of files of 1 MB: how many are accepted in a second, and how soon pages answer meanwhile. */
@Command(
        name = "rate",
        description = "A burst of frames of 1 MB: accepted a second, and how soon pages answer meanwhile.")
final class RateCommand implements Callable<Integer> {
    private static final String RULES = """
            {"splitting": {"folders": "stack"}, "patience": {"settleSeconds": 2, "quietSeconds": 10, "graceSeconds": 60}}""";

    private static final int BYTES = 1_000_000;
    private static final int FRAMES_A_STACK = 40;
    private static final double BAR = 40;

    @Mixin
    private DrillOptions options = new DrillOptions();

    @Option(names = "--files", description = "in the burst (${DEFAULT-VALUE})")
    private int files = 1200;

    @Override
    public Integer call() throws Exception {
        byte[] picture = picture();
        ExecutorService others = Executors.newFixedThreadPool(1);
        try (Trial trial = Trial.of(options, Map.of("north", RULES), true)) {
            trial.service().start();
            warmUp(trial);
            Probe probe = new Probe(trial.service());
            Future<?> probing = others.submit(probe);
            long start = System.nanoTime();
            for (int i = 0; i < files; i++) write(trial.folder("north"), i, picture);
            double writing = (System.nanoTime() - start) / 1e9;
            double seconds = accepted(trial, start, files + 1);
            probing.cancel(true);
            double rate = files / seconds;
            String load = Files.readString(Path.of("/proc/loadavg")).split(" ", 2)[0];
            List<Line> lines = new ArrayList<>();
            lines.add(new Line("files, MB each", files + ", " + BYTES / 1e6, "", true));
            lines.add(new Line(
                    "seconds to write them, until all are accepted", words("%.0f, %.0f", writing, seconds), "", true));
            lines.add(new Line("accepted a second, settling included", words("%.1f", rate), ">= 40", rate >= BAR));
            lines.add(probe.line(true));
            lines.add(new Line(
                    "processors, load of the machine at the end",
                    Runtime.getRuntime().availableProcessors() + ", " + load,
                    "",
                    true));
            return Line.print("burst", lines, List.of());
        } finally {
            others.shutdownNow();
        }
    }

    /** A frame of about 1 MB: what the picture lacks is grain. */
    private byte[] picture() {
        SplittableRandom random = new SplittableRandom(options.seed());
        Picture picture = Picture.black(1200, 800);
        for (float[] plane : picture.planes()) {
            for (int i = 0; i < plane.length; i++) plane[i] = (float) random.nextDouble(0.2, 0.7);
        }
        Capture capture =
                new Capture(Camera.USUAL, Rig.USUAL.lens(), OffsetDateTime.parse("2026-03-02T09:00:00+01:00"));
        return FrameWriter.bytes(picture, FrameFormat.JPEG_420, capture);
    }

    /** Behind the picture's end come bytes of its own, as cameras leave them there (Exif allows it), up to the full size. */
    private void write(Path folder, int number, byte[] picture) throws IOException {
        Path stack = Files.createDirectories(folder.resolve("HC-%04d".formatted(5000 + number / FRAMES_A_STACK)));
        byte[] rest = new byte[Math.max(8, BYTES - picture.length)];
        ByteBuffer.wrap(rest).putLong(number);
        Path file = stack.resolve("IMG_%05d.jpg".formatted(number));
        Files.write(file, picture);
        Files.write(file, rest, StandardOpenOption.APPEND);
    }

    private void warmUp(Trial trial) throws IOException, SQLException, InterruptedException {
        write(trial.folder("north"), files + FRAMES_A_STACK, picture());
        accepted(trial, System.nanoTime(), 1);
    }

    /** Waits until so many are accepted. @return seconds since the start */
    private double accepted(Trial trial, long start, int count) throws SQLException, InterruptedException {
        try (Connection connection = trial.connect();
                Statement statement = connection.createStatement()) {
            double seconds;
            int found;
            do {
                Thread.sleep(200);
                seconds = (System.nanoTime() - start) / 1e9;
                try (ResultSet row =
                        statement.executeQuery("select count(*) from stook.intake_file where sha256 is not null")) {
                    row.next();
                    found = row.getInt(1);
                }
            } while (found < count && seconds < options.limit());
            return seconds;
        }
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
