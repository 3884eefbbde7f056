package org.stook.imaging.codec;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.Optional;
import org.stook.imaging.frame.IccProfile;
import org.stook.imaging.frame.Samples;

/** TIFF 6.0 of 8 or 16 bit, grey or RGB, in strips or tiles, uncompressed, LZW, Deflate or PackBits. */
final class TiffReader implements FrameReader {
    private static final int ICC_PROFILE = 34675;
    private static final int NEW_SUBFILE_TYPE = 254;
    private static final int SUB_IFDS = 330;
    private static final int DNG_VERSION = 50706;
    private static final int LARGEST_PROFILE = 1 << 24;

    @Override
    public String format() {
        return "TIFF";
    }

    @Override
    public boolean recognises(byte[] start) {
        if (start.length < 4) return false;
        boolean little = start[0] == 'I' && start[1] == 'I' && start[3] == 0 && isVersion(start[2]);
        boolean big = start[0] == 'M' && start[1] == 'M' && start[2] == 0 && isVersion(start[3]);
        return little || big;
    }

    /** 42, or 43 for BigTIFF, which is recognised in order to be refused by name. */
    private static boolean isVersion(byte version) {
        return version == 42 || version == 43;
    }

    @Override
    public FrameHeader header(Path file) throws UnreadableFrame, IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            TiffDirectory directory = TiffDirectory.first(file, channel);
            TiffLayout layout = layout(directory);
            new TiffSegments(directory, layout).all(); // refuses what is not whole
            Optional<IccProfile> profile =
                    directory.undefined(ICC_PROFILE, LARGEST_PROFILE).map(IccProfile::of);
            ExifData exif = ExifData.ofTiff(file);
            boolean turned = Orientation.swapsSides(exif.orientation());
            return new FrameHeader(
                    format(),
                    turned ? layout.height : layout.width,
                    turned ? layout.width : layout.height,
                    layout.channels(),
                    layout.bitsPerSample,
                    new FrameHeader.Colour(profile, exif.declaredColour()),
                    exif.pixelsPerInch(),
                    exif.orientation(),
                    exif.capture());
        }
    }

    @Override
    public Samples read(Path file, SampleArrays arrays) throws UnreadableFrame, IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            TiffDirectory directory = TiffDirectory.first(file, channel);
            Samples stored = new TiffDecoding(directory, layout(directory)).decode();
            return Orientation.upright(stored, ExifData.ofTiff(file).orientation());
        }
    }

    /** Camera raw files are TIFFs too: their first directory holds only a thumbnail. */
    private static TiffLayout layout(TiffDirectory directory) throws UnreadableFrame, IOException {
        boolean thumbnail = (directory.number(NEW_SUBFILE_TYPE, 0) & 1) == 1 && directory.has(SUB_IFDS);
        if (directory.has(DNG_VERSION) || thumbnail) {
            throw directory.unsupported("a camera raw file", "a developed picture");
        }
        return new TiffLayout(directory);
    }
}
