package org.stook.comparison.stack;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.zip.CRC32;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;

/**
 * A generated bracket as files.
 *
 * @param name of the case, also of its folder
 * @param bracket the scene
 * @param format of the files
 * @param order which frame of the bracket each file shows, in order of capture
 */
public record SceneStack(String name, Bracket bracket, FrameFormat format, List<Integer> order) {
    private static final OffsetDateTime TAKEN = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

    public SceneStack {
        order = List.copyOf(order);
    }

    /** Every frame once, near to far. */
    public SceneStack(String name, Bracket bracket, FrameFormat format) {
        this(
                name,
                bracket,
                format,
                IntStream.range(0, bracket.plan().frames()).boxed().toList());
    }

    /** JPEG frames of a mineral, 3:2, near to far: the stack that timings are of. */
    public static SceneStack forTiming(double megapixels, int frames, long seed) {
        int height = (int) Math.round(Math.sqrt(megapixels * 1e6 / 1.5) / 4) * 4;
        BracketPlan plan = BracketPlan.of(height * 3 / 2, height, frames, seed);
        String name = String.format(Locale.ROOT, "mineral-%.1fMP-%d-%d", megapixels, frames, seed);
        return new SceneStack(name, Bracket.of(Subjects.named("mineral", seed), plan), FrameFormat.JPEG);
    }

    /**
     * The folder with the frames; they are rendered if they are not there yet. The folder's name changes with the plan and
     * with the generator, so that old frames are never taken for new ones.
     */
    public Path frames(Path cache) throws IOException {
        Path folder = cache.resolve("%s-%08x".formatted(name, key()));
        Path done = folder.resolve(".complete");
        if (Files.exists(done)) return folder;
        System.err.printf("rendering %d frames of %s%n", files(), name);
        writer().writeFrames(folder);
        Files.writeString(done, bracket.plan().toString());
        return folder;
    }

    /** How many files there are. */
    public int files() {
        return order.size();
    }

    public String fileName(int index) {
        return writer().fileName(index);
    }

    /** Which frame of the bracket the file of this name shows. */
    public int rank(String fileName) {
        for (int i = 0; i < files(); i++) if (fileName(i).equals(fileName)) return order.get(i);
        throw new IllegalArgumentException("%s is no file of %s".formatted(fileName, name));
    }

    private BracketWriter writer() {
        return new BracketWriter(bracket, format, Camera.USUAL, TAKEN)
                .withOrder(order.stream().mapToInt(Integer::intValue).toArray());
    }

    private long key() throws IOException {
        CRC32 crc = new CRC32();
        String plan = bracket.subject().name() + bracket.plan() + format + order;
        crc.update(plan.getBytes(StandardCharsets.UTF_8));
        Path generator = Path.of(Bracket.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .getPath());
        if (Files.isRegularFile(generator)) crc.update(Files.readAllBytes(generator));
        return crc.getValue();
    }

    /** The samples of a picture, shared. */
    public static Frame frame(Picture picture) {
        return new Frame(Arrays.stream(picture.planes())
                .map(samples -> new Plane(picture.width(), picture.height(), samples))
                .toList());
    }
}
