package org.stook.imaging.codec;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.codec.raw.RawFiles;
import org.stook.imaging.codec.raw.RawRefusal;
import org.stook.imaging.codec.raw.RawSize;
import org.stook.imaging.frame.Samples;

/** Camera raw, by LibRaw where that is installed; {@link org.stook.imaging.codec.raw} says how. */
final class RawReader implements FrameReader {
    /** Words at the start, and at which byte. */
    private static final List<String> WORDS =
            List.of("0FUJIFILM", "8CR\u0002", "4ftypcrx ", "0IIRO", "0IIRS", "0IIU\0", "0FOVb");

    private static final TiffReader TIFF = new TiffReader();

    private final RawFiles files = new RawFiles();

    @Override
    public String format() {
        return "raw";
    }

    @Override
    public boolean isRaw() {
        return true;
    }

    @Override
    public boolean recognises(byte[] start) {
        String text = new String(start, 0, Math.min(start.length, 32), StandardCharsets.ISO_8859_1);
        return WORDS.stream().anyMatch(word -> text.startsWith(word.substring(1), word.charAt(0) - '0'));
    }

    @Override
    public boolean recognises(Path file, byte[] start) throws IOException {
        return recognises(start) || (TIFF.recognises(start) && RawTiff.is(file));
    }

    @Override
    public FrameHeader header(Path file) throws UnreadableFrame, IOException {
        boolean checked = checkedWhole(file);
        try {
            RawSize size = files.size(file, !checked);
            FileLimits.check(file, size.width(), size.height(), Long.MAX_VALUE);
            ExifData exif = ExifData.ofRaw(file);
            boolean turned = Orientation.swapsSides(exif.orientation());
            return new FrameHeader(
                    format(),
                    turned ? size.height() : size.width(),
                    turned ? size.width() : size.height(),
                    3,
                    16,
                    new FrameHeader.Colour(Optional.empty(), FrameHeader.Declared.SRGB),
                    exif.pixelsPerInch(),
                    exif.orientation(),
                    exif.capture());
        } catch (RawRefusal e) {
            throw refused(file, e);
        }
    }

    @Override
    public Samples read(Path file, SampleArrays arrays) throws UnreadableFrame, IOException {
        checkedWhole(file);
        try {
            return Orientation.upright(files.picture(file), ExifData.ofRaw(file).orientation());
        } catch (RawRefusal e) {
            throw refused(file, e);
        }
    }

    /** @return whether its directories tell; what does not is unpacked to know */
    private boolean checkedWhole(Path file) throws UnreadableFrame, IOException {
        byte[] start;
        try (InputStream in = Files.newInputStream(file)) {
            start = in.readNBytes(START);
        }
        if (TIFF.recognises(start)) {
            RawTiff.checkWhole(file);
            return true;
        }
        if (recognises(start)) return false;
        throw UnreadableFrame.of(UnreadableFrame.Reason.NOT_A_FRAME, file, FirstBytes.describe(start), "camera raw");
    }

    private static UnreadableFrame refused(Path file, RawRefusal e) {
        UnreadableFrame.Reason reason = switch (e.why()) {
            case NO_LIBRARY -> UnreadableFrame.Reason.UNDEVELOPED;
            case UNSUPPORTED -> UnreadableFrame.Reason.UNSUPPORTED;
            case DAMAGED -> UnreadableFrame.Reason.DAMAGED;
        };
        return UnreadableFrame.of(reason, file, e.found(), e.expected());
    }
}
