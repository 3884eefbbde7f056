package org.stook.imaging.composite.view;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.stook.imaging.codec.FrameHeader;
import org.stook.imaging.codec.FrameReader;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.JpegWriter;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Samples;
import org.stook.imaging.placing.Placer;
import org.stook.imaging.tone.ColourSpace;
import org.stook.imaging.tone.Tone;
import org.stook.imaging.tone.ToneSettings;
import org.stook.imaging.tone.UnusableProfile;

/** One frame, decoded, to look at: with tones, as a whole or a part of it in its place. Any number of threads may use one. */
public final class FrameView {
    private static final double QUALITY = 0.9;
    /** What resampling needs around a point, rounding included. */
    private static final int SPARE = Placer.SUPPORT + 2;

    private final Samples samples;
    private final ColourSpace space;
    private final Placement within;

    private FrameView(Samples samples, ColourSpace space, Placement within) {
        this.samples = samples;
        this.space = space;
        this.within = within;
    }

    /**
     * What of a frame is needed to draw a part of the composite, where possible without holding the whole frame.
     *
     * @param placement reference pixel to frame pixel
     * @param part in reference pixels; the frame must cover it with {@link Placer#SUPPORT} pixels to spare, as every frame of a
     *     composite covers the common area
     */
    public static FrameView under(Path file, Placement placement, Area part) throws UnreadableFrame, IOException {
        FrameReader reader = FrameReaders.recognise(file);
        FrameHeader header = reader.header(file);
        Area needed = needed(placement, part, header);
        Optional<Samples> samples = reader.readPart(file, needed);
        return samples.isPresent()
                ? new FrameView(
                        samples.get(),
                        space(file, header),
                        placement.then(Placement.affine(1, 0, -needed.x(), 0, 1, -needed.y())))
                : new FrameView(reader.read(file), space(file, header), placement);
    }

    private static Area needed(Placement p, Area part, FrameHeader header) {
        double[] x = new double[4];
        double[] y = new double[4];
        for (int corner = 0; corner < 4; corner++) {
            double cx = part.x() + (corner & 1) * (part.width() - 1);
            double cy = part.y() + (corner >> 1) * (part.height() - 1);
            x[corner] = p.x(cx, cy);
            y[corner] = p.y(cx, cy);
        }
        Arrays.sort(x);
        Arrays.sort(y);
        int left = (int) Math.max(0, Math.floor(x[0]) - SPARE);
        int top = (int) Math.max(0, Math.floor(y[0]) - SPARE);
        int right = (int) Math.min(header.width() - 1.0, Math.ceil(x[3]) + SPARE);
        int bottom = (int) Math.min(header.height() - 1.0, Math.ceil(y[3]) + SPARE);
        return new Area(left, top, right - left + 1, bottom - top + 1);
    }

    /** The frame with its longer side at most {@code edge} pixels, reduced by a whole factor. */
    public static FrameView reduced(Path file, int edge) throws UnreadableFrame, IOException {
        FrameReader reader = FrameReaders.recognise(file);
        FrameHeader header = reader.header(file);
        int n = Math.max(1, (Math.max(header.width(), header.height()) + edge - 1) / edge);
        return new FrameView(reader.readReduced(file, n), space(file, header), Placement.identity());
    }

    /** What it takes in memory. */
    public long bytes() {
        return (long) samples.width() * samples.height() * samples.channels() * samples.bitsPerSample() / 8;
    }

    /**
     * The whole frame as the settings would make it, JPEG in sRGB.
     *
     * @param tone made to the frame
     * @param finish made on top, as to a composite
     */
    public byte[] toned(ToneSettings tone, ToneSettings finish) throws IOException {
        Tone toned = Tone.prepare(tone, space, space, 1);
        Frame frame = toned.blank(samples.width(), samples.height());
        toned.apply(samples, frame);
        return jpeg(frame, toned.outputSpace(), finish);
    }

    /**
     * The part that it was read for, in its place, JPEG in sRGB.
     *
     * @param part in reference pixels
     */
    public byte[] placed(Area part, ToneSettings tone, ToneSettings finish) throws IOException {
        Tone toned = Tone.prepare(tone, space, space, 1);
        Frame frame = toned.blank(part.width(), part.height());
        new Placer().draw(part, toned.rowsOf(samples)::read, samples.width(), within, frame, 0);
        return jpeg(frame, toned.outputSpace(), finish);
    }

    private static byte[] jpeg(Frame frame, ColourSpace space, ToneSettings finish) throws IOException {
        Frame shown = frame;
        ColourSpace shownIn = space;
        if (!finish.isNone()) {
            Tone last = Tone.prepare(finish, space, space, 1);
            shown = last.blank(frame.width(), frame.height());
            last.applyRows(frame, 0, frame.height(), shown);
            shownIn = last.outputSpace();
        }
        Screen screen = new Screen(shownIn, 1);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JpegWriter.write(screen.codes(shown), shown.width(), shown.height(), screen.channels(), QUALITY, out);
        return out.toByteArray();
    }

    /** As the survey takes it. */
    private static ColourSpace space(Path file, FrameHeader header) throws IOException {
        FrameHeader.Colour colour = header.colour();
        try {
            return ColourSpace.of(colour.profile(), colour.exif() == FrameHeader.Declared.ADOBE_RGB, header.channels());
        } catch (UnusableProfile e) {
            throw new IOException(file.getFileName() + ": " + e.getMessage(), e);
        }
    }
}
