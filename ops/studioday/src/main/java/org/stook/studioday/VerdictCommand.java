package org.stook.studioday;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Rig;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.Capture;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.file.FrameWriter;
import org.stook.scenes.subject.Subjects;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Sweeps dropped frame by frame as a camera does: how long after its last frame the table hears whether a sweep is whole. */
@Command(
        name = "verdict",
        description = "Sweeps dropped frame by frame: time from the last frame's arrival to the word at the table.")
final class VerdictCommand implements Callable<Integer> {
    private static final String RULES = """
            {"splitting": {"folders": "%s", "gapSeconds": 30},
             "patience": {"settleSeconds": 2, "quietSeconds": 10, "graceSeconds": 60}}""";

    private static final double BAR = 1.5;
    private static final double GIVEN_UP = 60;
    private static final long ASKED_EVERY = 40;
    private static final int HEAD = 4096;
    private static final int CHUNK = 1 << 20;
    private static final OffsetDateTime NINE = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Mixin
    private DrillOptions options = new DrillOptions();

    @Option(names = "--sweeps", description = "how many (${DEFAULT-VALUE})")
    private int sweeps = 12;

    @Option(names = "--frames", description = "of a sweep (${DEFAULT-VALUE})")
    private int frames = 10;

    @Option(names = "--width", description = "pixels of a frame; 2:3 (${DEFAULT-VALUE})")
    private int width = 6000;

    @Option(names = "--pace", description = "milliseconds from the end of a file to the next (${DEFAULT-VALUE})")
    private long pace = 1000;

    @Option(names = "--loose", description = "files lie loose in the station's folder, split by pauses")
    private boolean loose;

    @Option(names = "--kept", description = "folder with the frames of an earlier drill, or for those of this one")
    private @Nullable Path kept;

    @Override
    public Integer call() throws Exception {
        List<byte[]> sweep = pictures();
        List<Double> seconds = new ArrayList<>();
        List<Line> lines = new ArrayList<>();
        try (Trial trial = Trial.of(options, Map.of("north", RULES.formatted(loose ? "stream" : "stack")), true)) {
            trial.service().start();
            for (int i = -1; i < sweeps; i++) {
                double took = drop(trial, i + 1, sweep);
                System.out.printf(Locale.ROOT, "%s sweep %d: %.2f s%n", i < 0 ? "warm-up," : "", i + 1, took);
                if (i >= 0) seconds.add(took);
                if (loose) Thread.sleep(12_000);
            }
        }
        double[] sorted =
                seconds.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double worst = sorted[sorted.length - 1];
        lines.add(new Line(
                "sweeps, frames each, pixels",
                words("%d, %d, %d x %d", sweeps, frames, width, width * 2 / 3),
                "",
                true));
        lines.add(new Line(
                "seconds from last frame to word, median", words("%.2f", sorted[sorted.length / 2]), "", true));
        lines.add(new Line("worst", words("%.2f", worst), "<= 1.5", worst <= BAR));
        String load = Files.readString(Path.of("/proc/loadavg")).split(" ", 2)[0];
        lines.add(new Line(
                "processors, load at the end", Runtime.getRuntime().availableProcessors() + ", " + load, "", true));
        return Line.print("word at the table", lines, List.of());
    }

    /** @return seconds from the end of the last file until the word on all frames is given */
    private double drop(Trial trial, int number, List<byte[]> sweep) throws IOException, InterruptedException {
        String subject = "HC-%04d".formatted(7000 + number);
        Path folder = trial.folder("north");
        if (!loose) folder = Files.createDirectories(folder.resolve(subject));
        for (int i = 0; i < sweep.size(); i++) {
            if (i > 0) Thread.sleep(pace);
            write(folder.resolve("%s_%02d.jpg".formatted(subject, i + 1)), sweep.get(i), number);
        }
        long end = System.nanoTime();
        double passed;
        do {
            Thread.sleep(ASKED_EVERY);
            passed = (System.nanoTime() - end) / 1e9;
        } while (!told(trial, subject) && passed < GIVEN_UP);
        return passed;
    }

    /** In pieces, as it comes over a wire; the time of capture and bytes behind the picture's end tell the sweeps apart. */
    private static void write(Path file, byte[] picture, int number) throws IOException {
        byte[] bytes = shotAt(picture, number);
        try (OutputStream out = Files.newOutputStream(file)) {
            for (int at = 0; at < bytes.length; at += CHUNK) {
                out.write(bytes, at, Math.min(CHUNK, bytes.length - at));
                out.flush();
            }
            out.write(ByteBuffer.allocate(Long.BYTES).putLong(number).array());
        }
    }

    /** Each sweep is shot a minute after the one before. */
    private static byte[] shotAt(byte[] picture, int number) {
        String head = new String(picture, 0, HEAD, StandardCharsets.ISO_8859_1);
        String later = "2026:03:02 %02d:%02d:".formatted(9 + number / 60, number % 60);
        byte[] changed = head.replace("2026:03:02 09:00:", later).getBytes(StandardCharsets.ISO_8859_1);
        byte[] all = picture.clone();
        System.arraycopy(changed, 0, all, 0, HEAD);
        return all;
    }

    private boolean told(Trial trial, String subject) throws IOException, InterruptedException {
        JsonNode words = MAPPER.readTree(trial.service().text("/api/stations/north/word"));
        JsonNode newest = words.path(0);
        boolean same =
                loose || newest.path("stack").path("subject").stringValue("").equals(subject);
        boolean all = newest.path("frames").longValue(0) == frames
                && newest.path("arriving").longValue(0) == 0;
        boolean word = newest.path("mood").stringValue("").equals("WHOLE")
                || !newest.path("sentences").isEmpty();
        return same && all && word;
    }

    private List<byte[]> pictures() throws IOException, InterruptedException, ExecutionException {
        List<byte[]> pictures = new ArrayList<>();
        Path folder = Files.createDirectories(kept == null ? options.home().resolve("frames") : kept);
        Bracket bracket = Bracket.of(
                Subjects.named("mineral", options.seed()),
                BracketPlan.of(width, width * 2 / 3, frames, options.seed()));
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<byte[]>> rendering = new ArrayList<>();
            for (int i = 0; i < frames; i++) {
                int frame = i;
                rendering.add(two.submit(() -> picture(bracket, frame, folder)));
            }
            for (Future<byte[]> one : rendering) pictures.add(one.get());
        } finally {
            two.shutdownNow();
        }
        return pictures;
    }

    private byte[] picture(Bracket bracket, int frame, Path folder) throws IOException {
        Path file = folder.resolve("%d-%d-%d-%02d.jpg".formatted(options.seed(), width, frames, frame));
        if (!Files.exists(file)) {
            Capture capture = new Capture(Camera.USUAL, Rig.USUAL.lens(), NINE.plusSeconds(frame));
            Files.write(file, FrameWriter.bytes(bracket.encoded(frame), FrameFormat.JPEG_420, capture));
        }
        return Files.readAllBytes(file);
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
