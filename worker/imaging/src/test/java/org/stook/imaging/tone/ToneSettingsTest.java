package org.stook.imaging.tone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class ToneSettingsTest {
    private static final ToneSettings NONE = ToneSettings.none();

    @Test
    void saysWhichValueIsOutOfItsRange() {
        assertThatThrownBy(() -> NONE.withExposure(6)).hasMessage("exposure must be -5.0 to 5.0, got 6.0");
        assertThatThrownBy(() -> NONE.withExposure(Double.NaN)).hasMessageContaining("exposure must be");
        assertThatThrownBy(() -> NONE.withPoints(0.6, 1)).hasMessageContaining("black point must be");
        assertThatThrownBy(() -> NONE.withPoints(0.3, 0.3)).hasMessageContaining("white point must be");
        assertThatThrownBy(() -> NONE.withMidTone(0)).hasMessageContaining("mid-tone must be");
        assertThatThrownBy(() -> NONE.withContrast(1.5)).hasMessageContaining("contrast must be");
        assertThatThrownBy(() -> NONE.withSaturation(-0.1)).hasMessageContaining("saturation must be");
        assertThatThrownBy(() -> new ToneSettings.WhiteBalance(1, 20, 1)).hasMessageContaining("gain green must be");
        assertThatThrownBy(() -> new ToneSettings.MonochromeMix(0.5, 0.5, 0.5)).hasMessageContaining("sum to 1");
    }

    @Test
    void knowsWhetherItChangesAnything() {
        assertThat(NONE.isNone()).isTrue();
        assertThat(NONE.withExposure(0.1).isNone()).isFalse();
        assertThat(NONE.withExposure(0.1).withExposure(0).isNone()).isTrue();
    }
}
