package org.stook.imaging.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Samples;

/** Real frames. The set is "balls" of github.com/wcy199705/DfFintheWild (commit 8ba434f5), MIT licence. */
@Tag("published-data")
class PublishedFramesTest {
    /** The same on Debian's OpenJDK 17 (libjpeg-turbo) and Temurin 25 (libjpeg 6b). */
    @Test
    void decodesToTheSameSamplesOnEveryRuntime() throws Exception {
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        for (Path file : frames("balls_10f")) {
            Samples samples = FrameReaders.read(file);
            assertThat(samples.width()).isEqualTo(1280);
            assertThat(samples.height()).isEqualTo(720);
            int[] row = new int[samples.width() * samples.channels()];
            for (int y = 0; y < samples.height(); y++) {
                samples.row(y, row);
                for (int code : row) digest.update((byte) code);
            }
        }
        assertThat(HexFormat.of().formatHex(digest.digest()))
                .isEqualTo("a0d8bf347f476bcda9e1333baf3b19abec66a9a76fb17a8d47fa33a19aa7f75e");
    }

    private static List<Path> frames(String set) throws Exception {
        Path folder = Path.of(System.getProperty("stook.published-data", "published-data-not-set"), set);
        if (!Files.isDirectory(folder)) {
            String loud = "PUBLISHED DATA ABSENT: " + folder + " does not exist; this check did not run";
            System.err.println(loud);
            Assumptions.abort(loud);
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(file -> file.toString().endsWith(".jpg")).sorted().toList();
        }
    }
}
