package org.stook.imaging.codec.raw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stook.imaging.frame.Samples;

class DevelopmentTest {
    private static final float[] SAME = {1, 0, 0, 0, 1, 0, 0, 0, 1};

    /** Levels of red, green and blue at a place. */
    private interface Scene {
        double at(int colour, int x, int y);
    }

    private static Mosaic counted(Scene scene, int... filters) {
        short[] counts = new short[12 * 10];
        for (int i = 0; i < counts.length; i++) {
            int x = i % 12;
            int y = i / 12;
            counts[i] = (short) Math.round(1000 * scene.at(filters[2 * (y & 1) + (x & 1)], x, y));
        }
        return new Mosaic(12, 10, counts, filters, new Mosaic.Light(1000, new float[] {2, 1, 1.5f}, SAME));
    }

    /** What a flat neutral surface counts: less red and blue than green, by the balance. */
    @ParameterizedTest
    @ValueSource(strings = {"0 1 1 2", "1 0 2 1", "1 2 0 1", "2 1 1 0"})
    void flatGreyIsGreyUnderEveryArrangementOfFilters(String pattern) {
        int[] filters = java.util.Arrays.stream(pattern.split(" "))
                .mapToInt(Integer::parseInt)
                .toArray();
        double[] neutral = {0.2, 0.4, 0.4 / 1.5};
        Samples.Sixteen picture = Development.of(counted((c, x, y) -> neutral[c], filters));
        // IEC 61966-2-1: linear 0.4 is encoded as 0.6652.
        for (int i = 0; i < picture.codes().length; i++) {
            assertThat((picture.codes()[i] & 0xFFFF) / 65535.0).isCloseTo(0.6652, within(0.001));
        }
    }

    @Test
    void lightBeyondTheSensorIsWhiteWithoutAColour() {
        Samples.Sixteen picture = Development.of(counted((c, x, y) -> 1, 0, 1, 1, 2));
        for (short code : picture.codes()) assertThat(code & 0xFFFF).isEqualTo(65535);
    }

    @Test
    void edgeStaysWhereItIs() {
        double[] neutral = {0.5, 1, 1 / 1.5};
        Samples.Sixteen picture = Development.of(counted((c, x, y) -> neutral[c] * (x < 6 ? 0.1 : 0.8), 0, 1, 1, 2));
        for (int y = 0; y < 10; y++) {
            for (int c = 0; c < 3; c++) {
                assertThat(picture.code(4, y, c)).isCloseTo(picture.code(0, y, c), within(700));
                assertThat(picture.code(7, y, c)).isCloseTo(picture.code(11, y, c), within(700));
            }
        }
    }
}
