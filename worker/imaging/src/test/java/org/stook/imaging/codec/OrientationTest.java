package org.stook.imaging.codec;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.imaging.frame.Samples;

class OrientationTest {
    /**
     * TIFF 6.0, field 274: "the 0th row represents the visual .. of the image, and the 0th column represents the visual
     * ..". A 3 x 2 picture stored as 1 2 3 / 4 5 6.
     */
    @ParameterizedTest
    @CsvSource({
        "1, top, left, '1 2 3 4 5 6'",
        "2, top, right, '3 2 1 6 5 4'",
        "3, bottom, right, '6 5 4 3 2 1'",
        "4, bottom, left, '4 5 6 1 2 3'",
        "5, left, top, '1 4 2 5 3 6'",
        "6, right, top, '4 1 5 2 6 3'",
        "7, right, bottom, '6 3 5 2 4 1'",
        "8, left, bottom, '3 6 2 5 1 4'"
    })
    void putsRowAndColumnZeroWhereTheStandardSays(int orientation, String row, String column, String upright) {
        int[] expected = java.util.Arrays.stream(upright.split(" "))
                .mapToInt(Integer::parseInt)
                .toArray();
        Samples eight = new Samples.Eight(3, 2, 1, new byte[] {1, 2, 3, 4, 5, 6});
        Samples sixteen = new Samples.Sixteen(3, 2, 1, new short[] {1, 2, 3, 4, 5, 6});
        assertThat(TestPicture.codes(Orientation.upright(eight, orientation))).containsExactly(expected);
        assertThat(TestPicture.codes(Orientation.upright(sixteen, orientation))).containsExactly(expected);
        Samples lumaChroma = new Samples.EightLumaChroma(3, 2, lumaOnly());
        Samples turned = Orientation.upright(lumaChroma, orientation);
        for (int i = 0; i < expected.length; i++) {
            assertThat(turned.code(i % turned.width(), i / turned.width(), 1)).isEqualTo(expected[i]);
        }
        assertThat(row).isNotEqualTo(column);
    }

    @ParameterizedTest
    @CsvSource({"0", "9", "77"})
    void leavesPictureAloneWhenTheValueIsNonsense(int orientation) {
        Samples samples = new Samples.Eight(3, 2, 1, new byte[] {1, 2, 3, 4, 5, 6});
        assertThat(Orientation.upright(samples, orientation)).isSameAs(samples);
    }

    /** Luma 1 to 6 of a picture of 3 x 2 without any colour. */
    private static byte[] lumaOnly() {
        byte[] codes = new byte[18];
        for (int i = 0; i < 6; i++) {
            codes[3 * i] = (byte) (i + 1);
            codes[3 * i + 1] = (byte) 128;
            codes[3 * i + 2] = (byte) 128;
        }
        return codes;
    }
}
