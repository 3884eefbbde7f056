package org.stook.imaging.frame;

/**
 * Red, green and blue from luma and chroma as JFIF 1.02 has them (ITU-R BT.601, full range), in the same fixed-point
 * arithmetic everywhere: 16 bits of fraction, each product rounded half up, green's two products summed before rounding.
 */
public final class LumaChroma {
    /** No channel lies further from luma: 1.772 x 128, rounded up. */
    public static final int REACH = 227;

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

    /** What red is more than luma, before it is clipped to 0 to 255. */
    public static int redAbove(int cr) {
        return CR_TO_RED[cr];
    }

    /** What green is more than luma. */
    public static int greenAbove(int cb, int cr) {
        return (CB_TO_GREEN[cb] + CR_TO_GREEN[cr]) >> 16;
    }

    /** What blue is more than luma. */
    public static int blueAbove(int cb) {
        return CB_TO_BLUE[cb];
    }

    /** Red, 0 to 255, of luma and chroma of that range. */
    public static int red(int luma, int cr) {
        return clipped(luma + redAbove(cr));
    }

    /** Green, 0 to 255. */
    public static int green(int luma, int cb, int cr) {
        return clipped(luma + greenAbove(cb, cr));
    }

    /** Blue, 0 to 255. */
    public static int blue(int luma, int cb) {
        return clipped(luma + blueAbove(cb));
    }

    private static int clipped(int value) {
        return Math.max(0, Math.min(255, value));
    }
}
