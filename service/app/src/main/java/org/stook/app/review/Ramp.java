package org.stook.app.review;

/** Colours for places in a sweep: dark at the first frame, light at the last, so that lightness alone tells them apart. */
final class Ramp {
    /** Red, green and blue at equal distances; lightness rises evenly between them. */
    private static final int[][] STOPS = {{28, 34, 74}, {30, 92, 112}, {72, 142, 96}, {178, 178, 74}, {248, 232, 168}};

    private Ramp() {}

    /** @param position 0 to frames - 1. @return opaque ARGB */
    static int of(double position, int frames) {
        double t = frames < 2 ? 0 : Math.max(0, Math.min(1, position / (frames - 1)));
        double at = t * (STOPS.length - 1);
        int i = Math.min(STOPS.length - 2, (int) at);
        int colour = 0xFF;
        for (int c = 0; c < 3; c++) {
            colour = colour << 8 | (int) Math.round(STOPS[i][c] + (at - i) * (STOPS[i + 1][c] - STOPS[i][c]));
        }
        return colour;
    }
}
