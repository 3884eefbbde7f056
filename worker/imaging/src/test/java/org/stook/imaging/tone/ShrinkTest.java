package org.stook.imaging.tone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.imaging.frame.Frame;

class ShrinkTest {
    private static final ColourSpace SRGB = ColourSpace.srgb();

    @ParameterizedTest
    @CsvSource({"90, 60, 30, 30, 20", "91, 61, 40, 40, 27", "60, 90, 30, 20, 30", "300, 2, 10, 10, 1"})
    void keepsAspectRatioAndLight(int width, int height, int maxEdge, int newWidth, int newHeight) {
        Frame frame = noise(width, height);
        Frame small = Shrink.toMaxEdge(frame, maxEdge, SRGB);
        assertThat(small.width()).isEqualTo(newWidth);
        assertThat(small.height()).isEqualTo(newHeight);
        assertThat(light(small)).isCloseTo(light(frame), offset(2e-5));
    }

    @Test
    void leavesSmallFramesAlone() {
        Frame frame = noise(20, 30);
        assertThat(Shrink.toMaxEdge(frame, 30, SRGB)).isSameAs(frame);
        assertThatThrownBy(() -> Shrink.toMaxEdge(frame, 0, SRGB)).hasMessageContaining("got 0");
    }

    private static double light(Frame frame) {
        double sum = 0;
        for (float value : frame.plane(0).samples()) sum += SRGB.toLight(0, value);
        return sum / frame.plane(0).samples().length;
    }

    private static Frame noise(int width, int height) {
        Frame frame = Frame.blank(width, height, 1);
        Random random = new Random(4);
        for (int i = 0; i < width * height; i++) frame.plane(0).samples()[i] = random.nextFloat();
        return frame;
    }
}
