package org.stook.imaging.tone;

import java.util.List;
import java.util.Optional;
import org.stook.imaging.frame.IccProfile;

/**
 * What code values mean: a curve for each channel from encoded values to linear light, and for red, green and blue the
 * matrix from linear light to X, Y, Z of the ICC profile connection space (D50). Two spaces are equal if they mean the
 * same, whatever their profiles' bytes.
 */
public final class ColourSpace {
    private static final TransferCurve SRGB_CURVE =
            new TransferCurve.Parametric(2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045, 0, 0);

    /** IEC 61966-2-1: threshold 0.04045, slope 12.92, offset 0.055, exponent 2.4. */
    private static final ColourSpace SRGB = rgb("sRGB IEC 61966-2-1", Primaries.SRGB, SRGB_CURVE);

    /** Exponent 563/256, the encoding's 2.19921875. */
    private static final ColourSpace ADOBE_RGB =
            rgb("Compatible with Adobe RGB (1998)", Primaries.ADOBE_RGB, TransferCurve.Parametric.gamma(563 / 256.0));

    private static final ColourSpace DISPLAY_P3 = rgb("P3 primaries, D65, sRGB curve", Primaries.P3, SRGB_CURVE);

    /** ISO 22028-2: exponent 1.8, slope 16 below light 1/512. */
    private static final ColourSpace ROMM = rgb(
            "ROMM RGB ISO 22028-2",
            Primaries.ROMM,
            new TransferCurve.Parametric(1.8, 1, 0, 1 / 16.0, 16 / 512.0, 0, 0));

    private final String name;
    private final List<TransferCurve> curves;
    private final Matrix toConnection;
    private final IccProfile profile;

    ColourSpace(String name, List<TransferCurve> curves, Matrix toConnection, IccProfile profile) {
        this.name = name;
        this.curves = List.copyOf(curves);
        this.toConnection = toConnection;
        this.profile = profile;
    }

    private static ColourSpace rgb(String name, Primaries primaries, TransferCurve curve) {
        Matrix matrix = primaries.adaptation().times(primaries.toXyz());
        IccProfile profile = WrittenProfile.rgb(name, matrix, primaries.adaptation(), curve);
        return new ColourSpace(name, List.of(curve, curve, curve), matrix, profile);
    }

    public static ColourSpace srgb() {
        return SRGB;
    }

    /** Adobe RGB (1998). */
    public static ColourSpace adobeRgb() {
        return ADOBE_RGB;
    }

    public static ColourSpace displayP3() {
        return DISPLAY_P3;
    }

    /** ROMM RGB, also called ProPhoto RGB. */
    public static ColourSpace proPhotoRgb() {
        return ROMM;
    }

    /**
     * What the code values of a file mean: the embedded profile, else what it declares, else sRGB (common practice).
     *
     * @param adobeRgb whether the file declares Adobe RGB, as Exif does
     * @throws UnusableProfile as {@link #of(IccProfile, int)}
     */
    public static ColourSpace of(Optional<IccProfile> profile, boolean adobeRgb, int channels) throws UnusableProfile {
        if (profile.isPresent()) return of(profile.get(), channels);
        ColourSpace space = adobeRgb ? ADOBE_RGB : SRGB;
        return channels == 1 ? space.grey() : space;
    }

    /**
     * The space an embedded profile describes; its bytes are carried through unchanged.
     *
     * @param channels of the picture: 1 makes an RGB profile count for its curve only
     * @throws UnusableProfile if it is not a monotone matrix/curve profile of RGB or grey (a profile made of tables, say),
     *     or a grey one on a picture of three channels
     */
    public static ColourSpace of(IccProfile profile, int channels) throws UnusableProfile {
        ColourSpace space = EmbeddedProfile.read(profile);
        if (channels == 3 && space.isGrey())
            throw new UnusableProfile("a grey profile on a colour picture", "an RGB one");
        return channels == 1 ? space.grey() : space;
    }

    /** Grey with the curve of this space; itself if it is grey already. */
    public ColourSpace grey() {
        if (isGrey()) return this;
        TransferCurve curve = curves.get(1);
        String greyName = "Grey, curve of " + name;
        return new ColourSpace(greyName, List.of(curve), Matrix.IDENTITY, WrittenProfile.grey(greyName, curve));
    }

    public String name() {
        return name;
    }

    public boolean isGrey() {
        return curves.size() == 1;
    }

    /** The profile to embed: the one read, or one of our own making, the same bytes on every runtime. */
    public IccProfile profile() {
        return profile;
    }

    /** Linear light of an encoded value, both 0 to 1. */
    public double toLight(int channel, double encoded) {
        return curve(channel).toLight(encoded);
    }

    /** Encoded value of linear light, both 0 to 1. */
    public double fromLight(int channel, double light) {
        return curve(channel).fromLight(light);
    }

    /** CIELAB (D50) of an encoded colour; {@code encoded} has three values, or one if the space is grey. */
    public Lab lab(double... encoded) {
        double red = toLight(0, encoded[0]);
        double green = isGrey() ? red : toLight(1, encoded[1]);
        double blue = isGrey() ? red : toLight(2, encoded[2]);
        double[] white = toConnection.times(1, 1, 1);
        return Lab.of(toConnection.times(red, green, blue), white);
    }

    TransferCurve curve(int channel) {
        return curves.get(Math.min(channel, curves.size() - 1));
    }

    Matrix toConnection() {
        return toConnection;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ColourSpace that
                && curves.equals(that.curves)
                && toConnection.equals(that.toConnection);
    }

    @Override
    public int hashCode() {
        return 31 * curves.hashCode() + toConnection.hashCode();
    }

    @Override
    public String toString() {
        return name;
    }
}
