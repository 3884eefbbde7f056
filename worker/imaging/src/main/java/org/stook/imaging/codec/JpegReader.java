package org.stook.imaging.codec;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.stook.imaging.codec.UnreadableFrame.Reason;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.IccProfile;
import org.stook.imaging.frame.LargeArrays;
import org.stook.imaging.frame.Samples;

/** Baseline and progressive JPEG (ITU-T T.81) of 8 bit, grey or colour. */
final class JpegReader implements FrameReader {
    /** A JPEG beyond this is no frame of a camera; the whole file is held in memory while it is decoded. */
    private static final long LONGEST = 1L << 30;

    @Override
    public String format() {
        return "JPEG";
    }

    @Override
    public boolean recognises(byte[] start) {
        return start.length >= 3 && start[0] == (byte) 0xFF && start[1] == (byte) 0xD8 && start[2] == (byte) 0xFF;
    }

    @Override
    public FrameHeader header(Path file) throws UnreadableFrame, IOException {
        byte[] data = load(file);
        JpegStructure jpeg = JpegStructure.walk(file, data);
        Optional<IccProfile> profile = jpeg.profile();
        ExifData exif = ExifData.ofJpeg(data);
        boolean turned = Orientation.swapsSides(exif.orientation());
        return new FrameHeader(
                format(),
                turned ? jpeg.height() : jpeg.width(),
                turned ? jpeg.width() : jpeg.height(),
                jpeg.channels(),
                8,
                new FrameHeader.Colour(profile, exif.declaredColour()),
                exif.pixelsPerInch(),
                exif.orientation(),
                exif.capture());
    }

    @Override
    public Samples read(Path file, SampleArrays arrays) throws UnreadableFrame, IOException {
        byte[] data = load(file);
        JpegStructure jpeg = JpegStructure.walk(file, data);
        Samples stored = JpegDecoding.decode(file, jpeg, Area.whole(jpeg.width(), jpeg.height()), arrays);
        Samples upright = Orientation.upright(stored, ExifData.ofJpeg(data).orientation());
        if (upright != stored) arrays.giveBack(stored);
        return upright;
    }

    @Override
    public Optional<Samples> readPart(Path file, Area part) throws UnreadableFrame, IOException {
        byte[] data = load(file);
        JpegStructure jpeg = JpegStructure.walk(file, data);
        return ExifData.ofJpeg(data).orientation() < 2
                ? Optional.of(JpegDecoding.decode(file, jpeg, part, new SampleArrays()))
                : Optional.empty();
    }

    private static byte[] load(Path file) throws UnreadableFrame, IOException {
        long length = Files.size(file);
        if (length > LONGEST) {
            throw UnreadableFrame.of(
                    Reason.UNSUPPORTED, file, "a JPEG of %d bytes".formatted(length), "at most " + LONGEST);
        }
        byte[] data = LargeArrays.bytes((int) length);
        try (InputStream in = Files.newInputStream(file)) {
            int read = in.readNBytes(data, 0, data.length);
            // A file that is cut short meanwhile is incomplete; one that still grows is so at its next look.
            return read == data.length ? data : Arrays.copyOf(data, read);
        }
    }
}
