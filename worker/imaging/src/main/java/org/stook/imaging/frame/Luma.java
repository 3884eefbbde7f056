package org.stook.imaging.frame;

/** Luminance as this project uses it: luma of ITU-R BT.601, 0.299 R + 0.587 G + 0.114 B of encoded values. */
public final class Luma {
    private static final float RED = 0.299f;
    private static final float GREEN = 0.587f;
    private static final float BLUE = 0.114f;

    private Luma() {}

    /** Luma of three values of any one range. */
    public static float of(float red, float green, float blue) {
        return RED * red + GREEN * green + BLUE * blue;
    }

    /** Fills {@code count} samples of {@code out} from lines of the three channels. */
    public static void mix(float[] red, float[] green, float[] blue, int count, float[] out) {
        for (int x = 0; x < count; x++) out[x] = RED * red[x] + GREEN * green[x] + BLUE * blue[x];
    }
}
