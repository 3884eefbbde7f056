package org.stook.comparison.kernel;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SplittableRandom;
import javax.imageio.ImageIO;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.stook.imaging.blend.WholeFrame;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Luma;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Reduction;
import org.stook.imaging.frame.Samples;
import org.stook.imaging.placing.MapPlacer;
import org.stook.imaging.placing.Placer;
import org.stook.imaging.placing.SourceRows;
import org.stook.imaging.survey.FrameSurvey;
import org.stook.imaging.survey.FrameSurveyor;
import org.stook.imaging.tone.ColourSpace;
import org.stook.imaging.tone.Tone;
import org.stook.imaging.tone.ToneSettings;

/** Each pixel kernel on one thread, on a picture of {@value #WIDTH} x {@value #HEIGHT}: far larger than any cache. */
@State(Scope.Benchmark)
@SuppressWarnings("NullAway.Init") // JMH calls the set-up before any benchmark.
public class Kernels {
    public static final int WIDTH = 3000;
    public static final int HEIGHT = 2000;
    /** What breathing and a table's movement do to a frame. */
    private static final Placement PLACED = Placement.of(1.004, 0.0006, 3.3, -0.0006, 1.004, -2.6, 0, 0, 1);

    /** Wherever a placed frame reaches this, it has pixels to draw from. */
    private static final Area INSIDE = new Area(40, 40, WIDTH - 80, HEIGHT - 80);

    private Path file;
    private Samples samples;
    private Tone tone;
    private Frame frame;
    private Frame target;
    private Frame placed;
    private Plane luma;
    private float[] copy;
    private WholeFrame whole;
    private Plane half;

    @Setup(Level.Trial)
    public void render() throws IOException, UnreadableFrame {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        SplittableRandom random = new SplittableRandom(1);
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                int level = (int) (128 + 90 * Math.sin(x * 0.05) * Math.cos(y * 0.03)) + random.nextInt(24);
                image.setRGB(x, y, level << 16 | (level * 7 / 8) << 8 | level * 3 / 4);
            }
        }
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        ImageIO.write(image, "jpg", jpeg);
        file = Files.createTempFile("kernel", ".jpg");
        Files.write(file, jpeg.toByteArray());
        samples = FrameReaders.read(file);
        tone = Tone.prepare(ToneSettings.none().withExposure(0.2), ColourSpace.srgb(), ColourSpace.srgb(), 1);
        frame = tone.blank(WIDTH, HEIGHT);
        tone.apply(samples, frame);
        target = tone.blank(WIDTH, HEIGHT);
        placed = tone.blank(INSIDE.width(), INSIDE.height());
        luma = frame.luma();
        copy = new float[WIDTH * HEIGHT];
        whole = new WholeFrame(frame);
        half = new Plane(WIDTH / 2, HEIGHT / 2);
    }

    @TearDown(Level.Trial)
    public void tidy() throws IOException {
        Files.delete(file);
    }

    /** What the machine's memory gives: a plane read and written. */
    @Benchmark
    public float[] memory() {
        System.arraycopy(luma.samples(), 0, copy, 0, copy.length);
        return copy;
    }

    @Benchmark
    public Samples decode() throws IOException, UnreadableFrame {
        return FrameReaders.read(file);
    }

    @Benchmark
    public Frame tone() {
        tone.apply(samples, target);
        return target;
    }

    @Benchmark
    public float[] luminance() {
        Luma.mix(
                frame.plane(0).samples(),
                frame.plane(1).samples(),
                frame.plane(2).samples(),
                copy.length,
                copy);
        return copy;
    }

    @Benchmark
    public FrameSurvey survey() {
        return FrameSurveyor.survey(luma, 1);
    }

    @Benchmark
    public Plane halve() {
        return Reduction.half(luma);
    }

    @Benchmark
    public Frame place() {
        new Placer().draw(INSIDE, SourceRows.of(frame), WIDTH, PLACED, placed, 0);
        return placed;
    }

    @Benchmark
    public float[] placeMap() {
        MapPlacer placer = new MapPlacer(INSIDE, 1);
        float[] row = new float[INSIDE.width()];
        for (int y = 0; y < INSIDE.height(); y++) placer.row(luma, 1, 0, PLACED, y, row);
        return row;
    }

    @Benchmark
    public Plane detail() {
        whole.detail(half);
        return half;
    }
}
