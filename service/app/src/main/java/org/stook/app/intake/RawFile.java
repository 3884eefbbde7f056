package org.stook.app.intake;

import com.drew.imaging.ImageProcessingException;
import com.drew.imaging.tiff.TiffMetadataReader;
import com.drew.metadata.Directory;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Tells camera raw by its bytes. Most raw files are TIFFs whose first picture is a small preview, which would pass for a frame:
 * what gives them away is a picture of a colour filter array (PhotometricInterpretation 32803, TIFF/EP, ISO 12234-2), of linear
 * raw (34892) or a DNGVersion (50706, DNG 1.7). The rest begin with a word of their own (from memory).
 */
final class RawFile {
    private static final int PHOTOMETRIC = 0x0106;
    private static final int FILTER_ARRAY = 32803;
    private static final int LINEAR_RAW = 34892;
    private static final int DNG_VERSION = 0xC612;
    private static final int START = 32;
    /** Words at the start, and at which byte. */
    private static final List<String> WORDS =
            List.of("0FUJIFILM", "8CR\u0002", "4ftypcrx ", "0IIRO", "0IIRS", "0IIU\0", "0FOVb");

    private RawFile() {}

    static boolean is(Path file) throws IOException {
        byte[] start;
        try (InputStream in = Files.newInputStream(file)) {
            start = in.readNBytes(START);
        }
        String text = new String(start, StandardCharsets.ISO_8859_1);
        if (WORDS.stream().anyMatch(word -> text.startsWith(word.substring(1), word.charAt(0) - '0'))) {
            return true;
        }
        return (text.startsWith("II*\0") || text.startsWith("MM\0*")) && holdsRaw(file);
    }

    private static boolean holdsRaw(Path file) throws IOException {
        try {
            for (Directory directory :
                    TiffMetadataReader.readMetadata(file.toFile()).getDirectories()) {
                Integer photometric = directory.getInteger(PHOTOMETRIC);
                boolean sensor = photometric != null && (photometric == FILTER_ARRAY || photometric == LINEAR_RAW);
                if (sensor || directory.containsTag(DNG_VERSION)) {
                    return true;
                }
            }
            return false;
        } catch (ImageProcessingException | RuntimeException unreadable) {
            // Broken or cut short: the frame reader will say so.
            return false;
        }
    }
}
