package org.stook.scenes.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DiscKernelTest {

    /** Variance of a uniform disc on one axis is r^2 / 4 (any table of second moments of area). */
    @ParameterizedTest
    @ValueSource(doubles = {0.25, 0.5, 0.75, 1, 1.4, 2, 3.3, 5, 7.9, 8.1, 13, 40})
    void secondMomentIsThatOfTheDisc(double radius) {
        double[][] rows = DiscKernel.disc(radius);
        assertThat(DiscKernel.secondMoment(rows)).isCloseTo(radius * radius / 4, within(1e-3 * radius * radius));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4375, 1, 2.5, 9, 30})
    void runningSumsOfTheDifferencesGiveTheDisc(double radius) {
        DiscKernel kernel = DiscKernel.ofRadius(radius);
        double[][] rows = DiscKernel.disc(radius);
        double total = 0;
        for (int row = 0; row < rows.length; row++) {
            double[] sums = new double[rows.length + 1];
            for (int e = kernel.rowStart[row]; e < kernel.rowStart[row + 1]; e++) {
                for (int c = kernel.column[e] + kernel.reach; c < sums.length; c++) sums[c] += kernel.weight[e];
            }
            assertThat(sums).containsExactly(Arrays.copyOf(rows[row], sums.length), within(1e-6));
            total += Arrays.stream(sums).sum();
        }
        assertThat(total).isCloseTo(1, within(1e-5));
    }
}
