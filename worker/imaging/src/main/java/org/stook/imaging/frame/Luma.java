package org.stook.imaging.frame;

/** Luminance as this project uses it: (R + 2 G + B) / 4 of encoded values, cheap, and green, that carries most detail, counts most. */
public final class Luma {
    private Luma() {}

    /** Fills {@code out} from lines of the three channels. */
    public static void mix(float[] red, float[] green, float[] blue, float[] out) {
        for (int x = 0; x < out.length; x++) out[x] = 0.25f * (red[x] + blue[x]) + 0.5f * green[x];
    }
}
