package org.stook.imaging.composite;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.Optional;
import java.util.concurrent.atomic.LongAdder;
import org.stook.imaging.blend.Blended;
import org.stook.imaging.codec.JpegTags;
import org.stook.imaging.codec.JpegWriter;
import org.stook.imaging.codec.TiffTags;
import org.stook.imaging.codec.TiffWriter;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.tone.ColourSpace;
import org.stook.imaging.tone.Shrink;
import org.stook.imaging.tone.Tone;
import org.stook.imaging.tone.ToneSettings;

/** Gives the composite its finishing tone and writes it, its preview and its maps. */
final class FinishStage {
    /** Pixels on the long side of a preview. */
    static final int PREVIEW_EDGE = 1600;

    /** Pixels on the long side of a thumbnail. */
    static final int THUMBNAIL_EDGE = 320;

    private static final double PREVIEW_QUALITY = 0.9;
    private static final double DERIVATIVE_QUALITY = 0.92;

    private final Blended blended;
    private final Imprint imprint;
    private final Frame composite;
    private final ColourSpace space;

    FinishStage(Blended blended, Tone toned, ToneSettings finish, Imprint imprint) {
        this.blended = blended;
        this.imprint = imprint;
        if (finish.isNone()) {
            this.composite = blended.composite();
            this.space = toned.outputSpace();
            return;
        }
        Tone tone = Tone.prepare(finish, toned.outputSpace(), toned.outputSpace(), 1);
        Frame source = blended.composite();
        this.composite = tone.blank(source.width(), source.height());
        this.space = tone.outputSpace();
        tone.applyRows(source, 0, source.height(), composite);
    }

    Frame composite() {
        return composite;
    }

    ColourSpace space() {
        return space;
    }

    /** 16-bit TIFF with the reference frame's profile. @return SHA-256 of the file */
    String writeMaster(Path file) throws IOException {
        TiffTags tags = new TiffTags(16, Optional.of(space.profile()), imprint.pixelsPerInch(), imprint.origin());
        return write(file, composite, tags);
    }

    /** A JPEG of the full size, in the master's colours and with its metadata. */
    void writeDerivative(Path file) throws IOException {
        writeJpeg(file, composite, space, DERIVATIVE_QUALITY, imprint.pixelsPerInch());
    }

    /** A small JPEG in sRGB (or grey), for looking at. */
    void writePreview(Path file) throws IOException {
        writeSmall(file, PREVIEW_EDGE);
    }

    /** A very small one. */
    void writeThumbnail(Path file) throws IOException {
        writeSmall(file, THUMBNAIL_EDGE);
    }

    private void writeSmall(Path file, int edge) throws IOException {
        ColourSpace screen = space.isGrey() ? ColourSpace.srgb().grey() : ColourSpace.srgb();
        Frame small = Shrink.toMaxEdge(composite, edge, space);
        Tone toScreen = Tone.prepare(ToneSettings.none(), space, screen, 1);
        Frame shown = toScreen.blank(small.width(), small.height());
        toScreen.applyRows(small, 0, small.height(), shown);
        double shrunk = (double) small.width() / composite.width();
        writeJpeg(file, shown, screen, PREVIEW_QUALITY, imprint.pixelsPerInch() * shrunk);
    }

    private void writeJpeg(Path file, Frame frame, ColourSpace colours, double quality, double pixelsPerInch)
            throws IOException {
        try (OutputStream out = open(file)) {
            JpegWriter.write(
                    frame, new JpegTags(quality, Optional.of(colours.profile()), pixelsPerInch, imprint.origin()), out);
        }
    }

    /** 16-bit grey TIFF; the code value of a pixel is the rank of the frame it mostly came from. */
    void writeSourceMap(Path file) throws IOException {
        Frame frame = Frame.blank(composite.width(), composite.height(), 1);
        short[] ranks = blended.sourceMap();
        float[] out = frame.plane(0).samples();
        for (int i = 0; i < ranks.length; i++) out[i] = Short.toUnsignedInt(ranks[i]) / 65535f;
        write(file, frame, mapTags());
    }

    /** 16-bit grey TIFF; code value 256 x sweep position (frames, 0 the first), 65535 where nothing decided it. */
    void writeDepthMap(Path file) throws IOException {
        Plane depth = blended.depthMap();
        Frame frame = Frame.blank(depth.width(), depth.height(), 1);
        float[] out = frame.plane(0).samples();
        int pixels = depth.width() * depth.height();
        for (int i = 0; i < pixels; i++) {
            float position = depth.samples()[i];
            out[i] = Float.isNaN(position) ? 1 : Math.min(65534, Math.round(position * 256)) / 65535f;
        }
        write(file, frame, mapTags());
    }

    /** Samples of the composite at an end of the scale, per cent. */
    double clippedPercent(int threads) {
        LongAdder clipped = new LongAdder();
        int width = composite.width();
        Parallel.forEach(composite.height(), threads, y -> {
            for (Plane plane : composite.planes()) clipped.add(clipped(plane.samples(), y * width, (y + 1) * width));
        });
        return 100.0 * clipped.sum() / ((long) width * composite.height() * composite.channels());
    }

    private static int clipped(float[] samples, int from, int to) {
        int clipped = 0;
        for (int i = from; i < to; i++) if (samples[i] <= 0 || samples[i] >= 1) clipped++;
        return clipped;
    }

    private TiffTags mapTags() {
        return TiffTags.sixteenBit(Optional.empty(), imprint.origin().software())
                .at(imprint.pixelsPerInch());
    }

    private static String write(Path file, Frame frame, TiffTags tags) throws IOException {
        MessageDigest digest = Sha256.digest();
        try (OutputStream out = new DigestOutputStream(open(file), digest)) {
            TiffWriter.write(frame, tags, out);
        }
        return Sha256.hex(digest);
    }

    private static OutputStream open(Path file) throws IOException {
        return new BufferedOutputStream(Files.newOutputStream(file), 1 << 16);
    }
}
