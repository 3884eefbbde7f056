package org.stook.imaging.tone;

import java.util.Optional;

/**
 * One set of tonal adjustments, made alike to every frame of a stack. All values act on linear light.
 *
 * @param exposureEv exposure in stops (EV), -5 to 5; light is multiplied by 2^exposureEv
 * @param whiteBalance gains of red, green and blue; without effect on grey frames
 * @param blackPoint light that becomes black, 0 to 0.5
 * @param whitePoint light that becomes white, at least 0.01 above the black point, at most 1
 * @param midTone light becomes light^(1/midTone), 0.2 to 5; above 1 lightens the middle, 1 leaves it
 * @param contrast slope 2^contrast at the pivot, 18 % grey, -1 to 1; black, pivot and white stay where they are, 0
 *     leaves all
 * @param saturation distance from the grey of equal luminance, 0 (none left) to 3; 1 leaves it
 * @param monochrome if given, the picture becomes grey, mixed from the three channels
 */
public record ToneSettings(
        double exposureEv,
        WhiteBalance whiteBalance,
        double blackPoint,
        double whitePoint,
        double midTone,
        double contrast,
        double saturation,
        Optional<MonochromeMix> monochrome) {

    private static final double LEAST_SPAN = 0.01;
    private static final ToneSettings NONE = new ToneSettings(0, WhiteBalance.NONE, 0, 1, 1, 0, 1, Optional.empty());

    /** Factors on the light of each channel, each 0.1 to 10; a grey card is neutral once its channels are equal. */
    public record WhiteBalance(double red, double green, double blue) {
        public static final WhiteBalance NONE = new WhiteBalance(1, 1, 1);

        public WhiteBalance {
            within("white balance gain red", red, 0.1, 10);
            within("white balance gain green", green, 0.1, 10);
            within("white balance gain blue", blue, 0.1, 10);
        }
    }

    /** Share of each channel's light in the grey, each -2 to 3, together 1. */
    public record MonochromeMix(double red, double green, double blue) {
        public MonochromeMix {
            within("monochrome weight red", red, -2, 3);
            within("monochrome weight green", green, -2, 3);
            within("monochrome weight blue", blue, -2, 3);
            if (Math.abs(red + green + blue - 1) > 1e-6) {
                throw new IllegalArgumentException("monochrome weights must sum to 1, got %s + %s + %s = %s"
                        .formatted(red, green, blue, red + green + blue));
            }
        }
    }

    public ToneSettings {
        within("exposure", exposureEv, -5, 5);
        within("black point", blackPoint, 0, 0.5);
        within("white point", whitePoint, blackPoint + LEAST_SPAN, 1);
        within("mid-tone", midTone, 0.2, 5);
        within("contrast", contrast, -1, 1);
        within("saturation", saturation, 0, 3);
    }

    /** Changes nothing. */
    public static ToneSettings none() {
        return NONE;
    }

    public boolean isNone() {
        return equals(NONE);
    }

    public ToneSettings withExposure(double ev) {
        return new ToneSettings(ev, whiteBalance, blackPoint, whitePoint, midTone, contrast, saturation, monochrome);
    }

    public ToneSettings withWhiteBalance(WhiteBalance gains) {
        return new ToneSettings(exposureEv, gains, blackPoint, whitePoint, midTone, contrast, saturation, monochrome);
    }

    public ToneSettings withPoints(double black, double white) {
        return new ToneSettings(exposureEv, whiteBalance, black, white, midTone, contrast, saturation, monochrome);
    }

    public ToneSettings withMidTone(double value) {
        return new ToneSettings(
                exposureEv, whiteBalance, blackPoint, whitePoint, value, contrast, saturation, monochrome);
    }

    public ToneSettings withContrast(double value) {
        return new ToneSettings(
                exposureEv, whiteBalance, blackPoint, whitePoint, midTone, value, saturation, monochrome);
    }

    public ToneSettings withSaturation(double value) {
        return new ToneSettings(exposureEv, whiteBalance, blackPoint, whitePoint, midTone, contrast, value, monochrome);
    }

    public ToneSettings withMonochrome(MonochromeMix mix) {
        return new ToneSettings(
                exposureEv, whiteBalance, blackPoint, whitePoint, midTone, contrast, saturation, Optional.of(mix));
    }

    private static void within(String what, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException("%s must be %s to %s, got %s".formatted(what, least, most, value));
        }
    }
}
