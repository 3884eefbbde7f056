package org.stook.imaging.tone;

import java.util.Optional;

/** Where red, green and blue meet: saturation or monochrome mix, and the change of primaries, in linear light. */
record ChannelMix(Matrix matrix, boolean monochrome) {
    /** Nothing, if the channels need not meet. */
    static Optional<ChannelMix> of(ToneSettings settings, ColourSpace in, ColourSpace out) {
        if (in.isGrey()) return Optional.empty();
        if (settings.monochrome().isPresent()) {
            ToneSettings.MonochromeMix mix = settings.monochrome().get();
            double[] row = {mix.red(), mix.green(), mix.blue()};
            return Optional.of(new ChannelMix(rows(row, row, row), true));
        }
        boolean samePrimaries = in.toConnection().equals(out.toConnection());
        if (settings.saturation() == 1 && samePrimaries) return Optional.empty();
        Matrix saturation = saturation(settings.saturation(), in.toConnection());
        if (samePrimaries) return Optional.of(new ChannelMix(saturation, false));
        Matrix primaries = out.toConnection().inverse().times(in.toConnection());
        return Optional.of(new ChannelMix(primaries.times(saturation), false));
    }

    /** c becomes Y + s (c - Y), with Y the luminance of the input's own primaries. */
    private static Matrix saturation(double s, Matrix toConnection) {
        double[] out = new double[9];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) out[3 * i + j] = (1 - s) * toConnection.at(1, j) + (i == j ? s : 0);
        }
        return new Matrix(out);
    }

    private static Matrix rows(double[] first, double[] second, double[] third) {
        return new Matrix(new double[] {
            first[0], first[1], first[2], second[0], second[1], second[2], third[0], third[1], third[2]
        });
    }
}
