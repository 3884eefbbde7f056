package org.stook.imaging.tone;

/**
 * What happens to the light of one channel by itself, before the channels meet. Rises everywhere.
 *
 * @param gain white balance and exposure, alike for all frames
 * @param flicker what evens this frame out to the reference frame
 */
record ToneCurve(ToneSettings settings, double gain, double flicker) {
    /** Scene average by common practice: the pivot of the contrast step. */
    private static final double PIVOT = 0.18;

    /** Light from which on a flicker gain below 1 fades out. */
    private static final double NEARLY_WHITE = 0.95;

    /** A hair above 1: rounding in the curves is not clipping. */
    private static final double WHITE = 1 + 1e-9;

    /** @param channel 0 to 2, or -1 for a grey frame, which has no white balance */
    static ToneCurve of(ToneSettings settings, int channel, double flickerGain) {
        ToneSettings.WhiteBalance balance = settings.whiteBalance();
        double balanceGain = switch (channel) {
            case 0 -> balance.red();
            case 1 -> balance.green();
            case 2 -> balance.blue();
            default -> 1;
        };
        return new ToneCurve(settings, balanceGain * StrictMath.pow(2, settings.exposureEv()), flickerGain);
    }

    /** Between the points, before clipping: below 0 is darker than black, above 1 lighter than white. */
    double stretched(double light) {
        return (evened(light) * gain - settings.blackPoint()) / (settings.whitePoint() - settings.blackPoint());
    }

    /**
     * A clipped sample says only that its light is white or more. So white stays white whatever the gain, lest the white
     * ground of a lighter frame turn grey; just below, the gain fades out on a straight line.
     */
    private double evened(double light) {
        if (flicker >= 1 || light <= NEARLY_WHITE) return light * flicker;
        double share = (light - NEARLY_WHITE) / (1 - NEARLY_WHITE);
        return NEARLY_WHITE * flicker + share * (1 - NEARLY_WHITE * flicker);
    }

    static boolean isBelowBlack(double stretched) {
        return stretched < 0;
    }

    static boolean isAboveWhite(double stretched) {
        return stretched > WHITE;
    }

    /** Light after all steps, 0 to 1. */
    double light(double stretched) {
        double light = Math.max(0, Math.min(1, stretched));
        if (settings.midTone() != 1) light = StrictMath.pow(light, 1 / settings.midTone());
        if (settings.contrast() != 0) light = contrast(light, StrictMath.pow(2, settings.contrast()));
        return light;
    }

    /** Two powers that meet in the pivot with one slope; 0, pivot and 1 stay. */
    private static double contrast(double light, double slope) {
        if (light <= PIVOT) return PIVOT * StrictMath.pow(light / PIVOT, slope);
        return 1 - (1 - PIVOT) * StrictMath.pow((1 - light) / (1 - PIVOT), slope);
    }
}
