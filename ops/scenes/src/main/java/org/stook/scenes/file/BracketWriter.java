package org.stook.scenes.file;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.bracket.Truth;

/** Writes the frames of a bracket and the truth about it. */
public final class BracketWriter {
    private static final Duration BETWEEN_FRAMES = Duration.ofMillis(850);
    /** A level of a depth map, in frames. */
    private static final double DEPTH_LEVEL = 1 / 256.0;

    private final Bracket bracket;
    private final FrameFormat format;
    private final Camera camera;
    private final OffsetDateTime first;
    private final int[] order;

    /** @param first when the first frame was taken; the others follow every 0.85 s */
    public BracketWriter(Bracket bracket, FrameFormat format, Camera camera, OffsetDateTime first) {
        this(
                bracket,
                format,
                camera,
                first,
                IntStream.range(0, bracket.plan().frames()).toArray());
    }

    private BracketWriter(Bracket bracket, FrameFormat format, Camera camera, OffsetDateTime first, int[] order) {
        this.bracket = bracket;
        this.format = format;
        this.camera = camera;
        this.first = first;
        this.order = order;
    }

    /**
     * The same with files in another order of capture: file k then shows frame {@code frames[k]} of the bracket. Frames
     * can be left out, repeated, swapped or come from far to near.
     */
    public BracketWriter withOrder(int... frames) {
        return new BracketWriter(bracket, format, camera, first, frames.clone());
    }

    /** The same files of another bracket. */
    BracketWriter of(Bracket other) {
        return new BracketWriter(other, format, camera, first, order);
    }

    /** The bracket that is written. */
    public Bracket bracket() {
        return bracket;
    }

    /** How many files there are. */
    public int files() {
        return order.length;
    }

    /** Which frame of the bracket file {@code index} shows. */
    public int frameOf(int index) {
        return order[index];
    }

    /** Name of file {@code index}: HC_0001.jpg is the first. */
    public String fileName(int index) {
        return String.format(Locale.ROOT, "HC_%04d.%s", index + 1, format.extension());
    }

    /** The bytes of file {@code index}. */
    public byte[] frame(int index) {
        return FrameWriter.bytes(bracket.encoded(order[index]), format, capture(index));
    }

    /** Writes file {@code index} into a folder and returns the file. */
    public Path writeFrame(int index, Path folder) throws IOException {
        return Files.write(folder.resolve(fileName(index)), frame(index));
    }

    /** Writes all files into a folder, which is made if absent. */
    public void writeFrames(Path folder) throws IOException {
        Files.createDirectories(folder);
        for (int i = 0; i < files(); i++) writeFrame(i, folder);
    }

    /** What Exif tells about file {@code index}. */
    public Capture capture(int index) {
        return new Capture(camera, bracket.plan().rig().lens(), first.plus(BETWEEN_FRAMES.multipliedBy(index)));
    }

    /**
     * Writes the truth: {@code truth.tif} and {@code truth.png} (all in focus, 16 bits), {@code depth.png} (sweep
     * position in frames x 256, 16 bits grey), {@code subject.png} and {@code silhouette.png} (white where true; the band
     * reaches 4 px), {@code truth.json} (placements, gains, plan).
     */
    public void writeTruth(Path folder) throws IOException {
        Files.createDirectories(folder);
        Truth truth = bracket.truth();
        Picture all = truth.encoded();
        FrameWriter.write(all, FrameFormat.TIFF_16, capture(0), folder.resolve("truth.tif"));
        ImageIO.write(Images.of(all, 16), "png", folder.resolve("truth.png").toFile());
        grey(depths(truth), folder.resolve("depth.png"));
        grey(white(truth.subject()), folder.resolve("subject.png"));
        grey(white(truth.silhouette(TruthJson.BAND)), folder.resolve("silhouette.png"));
        Files.write(
                folder.resolve("truth.json"),
                new TruthJson(bracket, truth, this).text().getBytes(StandardCharsets.UTF_8));
    }

    private void grey(short[] data, Path file) throws IOException {
        ImageIO.write(Images.grey16(data, bracket.plan().width(), bracket.plan().height()), "png", file.toFile());
    }

    private static short[] depths(Truth truth) {
        float[] position = truth.position();
        short[] data = new short[position.length];
        for (int p = 0; p < data.length; p++) {
            data[p] = (short) (int) Math.max(0, Math.min(65535, Math.round(position[p] / DEPTH_LEVEL)));
        }
        return data;
    }

    private static short[] white(boolean[] mask) {
        short[] data = new short[mask.length];
        for (int p = 0; p < data.length; p++) data[p] = (short) (mask[p] ? 0xFFFF : 0);
        return data;
    }
}
