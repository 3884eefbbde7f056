package org.stook.imaging.tone;

/** What happens to the light of one channel by itself, before the channels meet. Rises everywhere. */
record ToneCurve(ToneSettings settings, double gain) {
    /** Scene average by common practice: the pivot of the contrast step. */
    private static final double PIVOT = 0.18;

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
        return new ToneCurve(settings, balanceGain * StrictMath.pow(2, settings.exposureEv()) * flickerGain);
    }

    /** Between the points, before clipping: below 0 is darker than black, above 1 lighter than white. */
    double stretched(double light) {
        return (light * gain - settings.blackPoint()) / (settings.whitePoint() - settings.blackPoint());
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
