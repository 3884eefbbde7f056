package org.stook.imaging.tone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class DeltaETest {
    /** Source in the head of the file. */
    @ParameterizedTest
    @CsvFileSource(resources = "ciede2000-pairs.csv", numLinesToSkip = 3)
    void meetsThePublishedPairs(double l1, double a1, double b1, double l2, double a2, double b2, double expected) {
        Lab one = new Lab(l1, a1, b1);
        Lab two = new Lab(l2, a2, b2);
        assertThat(DeltaE.ciede2000(one, two)).isCloseTo(expected, offset(1e-4));
        assertThat(DeltaE.ciede2000(two, one)).isCloseTo(expected, offset(1e-4));
    }

    @Test
    void equalColoursDoNotDiffer() {
        assertThat(DeltaE.ciede2000(new Lab(40, 10, -20), new Lab(40, 10, -20))).isZero();
        assertThat(DeltaE.ciede2000(new Lab(40, 0, 0), new Lab(40, 0, 0))).isZero();
    }
}
