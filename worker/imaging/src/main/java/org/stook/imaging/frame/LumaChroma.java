package org.stook.imaging.frame;

/**
 * Red, green and blue from luma and chroma as JFIF 1.02 has them (ITU-R BT.601, full range), in the same fixed-point
 * arithmetic everywhere: 16 bits of fraction, each product rounded half up, green's two products summed before rounding.
 */
public final class LumaChroma {
    private static final int[] CR_TO_RED = new int[256];
    private static final int[] CB_TO_BLUE = new int[256];
    private static final int[] CR_TO_GREEN = new int[256];
    private static final int[] CB_TO_GREEN = new int[256];

    static {
        for (int i = 0; i < 256; i++) {
            int x = i - 128;
            CR_TO_RED[i] = (fixed(1.40200) * x + 32768) >> 16;
            CB_TO_BLUE[i] = (fixed(1.77200) * x + 32768) >> 16;
            CR_TO_GREEN[i] = -fixed(0.71414) * x;
            CB_TO_GREEN[i] = -fixed(0.34414) * x + 32768;
        }
    }

    private LumaChroma() {}

    private static int fixed(double factor) {
        return (int) (factor * 65536 + 0.5);
    }

    /** Red, 0 to 255, of luma and chroma of that range. */
    public static int red(int luma, int cr) {
        return clipped(luma + CR_TO_RED[cr]);
    }

    /** Green, 0 to 255. */
    public static int green(int luma, int cb, int cr) {
        return clipped(luma + ((CB_TO_GREEN[cb] + CR_TO_GREEN[cr]) >> 16));
    }

    /** Blue, 0 to 255. */
    public static int blue(int luma, int cb) {
        return clipped(luma + CB_TO_BLUE[cb]);
    }

    private static int clipped(int value) {
        return Math.max(0, Math.min(255, value));
    }
}
