package org.stook.imaging.codec;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Tells camera raw by its bytes. Most raw files are TIFFs whose first picture is a small preview, which would pass for a frame:
 * what gives them away is a picture of a colour filter array (PhotometricInterpretation 32803, TIFF/EP, ISO 12234-2), of linear
 * raw (34892) or a DNGVersion (50706, DNG 1.7). The rest begin with a word of their own (from memory).
 */
final class RawTiff {
    private static final int PHOTOMETRIC = 262;
    private static final int FILTER_ARRAY = 32803;
    private static final int LINEAR_RAW = 34892;
    private static final int DNG_VERSION = 50706;
    private static final int SUB_IFDS = 330;
    private static final int[][] DATA = {{273, 279}, {324, 325}}; // strips, tiles: where and how long
    private static final int MOST_DIRECTORIES = 32;
    private static final int MOST_PIECES = 1 << 20;

    private final TiffDirectory first;
    private final List<TiffDirectory> directories = new ArrayList<>();

    private RawTiff(TiffDirectory first) {
        this.first = first;
        directories.add(first);
    }

    /** Whether this TIFF is one. */
    static boolean is(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            RawTiff tiff = new RawTiff(TiffDirectory.first(file, channel));
            if (tiff.first.has(DNG_VERSION)) return true;
            try {
                tiff.follow();
            } catch (UnreadableFrame cut) {
                // What would tell has not arrived: better waited for than its preview taken for the picture.
                return cut.reason() == UnreadableFrame.Reason.INCOMPLETE && tiff.first.has(SUB_IFDS);
            }
            for (TiffDirectory directory : tiff.directories) {
                long shown = directory.number(PHOTOMETRIC, 0);
                if (shown == FILTER_ARRAY || shown == LINEAR_RAW) return true;
            }
            return false;
        } catch (UnreadableFrame broken) {
            return false; // the reader of TIFFs will say so
        }
    }

    /** Refuses a file that ends before the last of its pictures does. */
    static void checkWhole(Path file) throws UnreadableFrame, IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            RawTiff tiff = new RawTiff(TiffDirectory.first(file, channel));
            tiff.follow();
            for (TiffDirectory directory : tiff.directories) {
                for (int[] data : DATA) {
                    long[] offsets = directory.numbers(data[0], MOST_PIECES);
                    long[] sizes = directory.numbers(data[1], MOST_PIECES);
                    for (int i = 0; i < Math.min(offsets.length, sizes.length); i++) {
                        long end = offsets[i] + sizes[i];
                        if (end > directory.fileLength()) throw directory.incomplete(end);
                    }
                }
            }
        }
    }

    /** All directories: one after the other, and those below them. */
    private void follow() throws UnreadableFrame, IOException {
        for (int i = 0; i < directories.size() && i < MOST_DIRECTORIES; i++) {
            TiffDirectory directory = directories.get(i);
            if (directory.next() != 0) directories.add(directory.at(directory.next()));
            for (long below : directory.numbers(SUB_IFDS, MOST_DIRECTORIES)) directories.add(directory.at(below));
        }
    }
}
