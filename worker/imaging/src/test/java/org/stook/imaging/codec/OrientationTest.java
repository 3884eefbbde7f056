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
        assertThat(row).isNotEqualTo(column);
    }

    @ParameterizedTest
    @CsvSource({"0", "9", "77"})
    void leavesPictureAloneWhenTheValueIsNonsense(int orientation) {
        Samples samples = new Samples.Eight(3, 2, 1, new byte[] {1, 2, 3, 4, 5, 6});
        assertThat(Orientation.upright(samples, orientation)).isSameAs(samples);
    }
}
