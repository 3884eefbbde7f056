package org.stook.imaging.survey;

/** How much sharpness a band has lost (natural logarithm) at each frame, for tiles at equally spaced places. */
final class FallTable {
    /** The function is asked for hundreds of millions of times: values between these are interpolated, within 2e-4. */
    private static final int STEPS = 32;

    private static final int FAR = 32;
    private static final float[] LOST = lost();

    private final double first;
    private final double grid;
    private final int places;
    private final float[][] rows;

    /**
     * @param positions of the frames
     * @param first place of a tile
     * @param grid distance to the next place
     * @param places how many
     * @param widths of each octave's peak
     */
    FallTable(double[] positions, double first, double grid, int places, double[] widths) {
        this.first = first;
        this.grid = grid;
        this.places = places;
        this.rows = new float[widths.length * places][];
        for (int k = 0; k < widths.length; k++) {
            for (int z = 0; z < places; z++) rows[k * places + z] = row(positions, first + z * grid, widths[k]);
        }
    }

    int places() {
        return places;
    }

    double place(int z) {
        return first + z * grid;
    }

    /** One value per frame. */
    float[] row(int octave, int z) {
        return rows[octave * places + z];
    }

    /** Logarithm of sharpness lost so many widths off focus. */
    private static float at(double widths) {
        float steps = (float) Math.abs(widths) * STEPS;
        int i = (int) steps;
        return i >= FAR * STEPS ? exactly(widths) : LOST[i] + (steps - i) * (LOST[i + 1] - LOST[i]);
    }

    private static float exactly(double widths) {
        return (float) (-1.5 * Math.log(1 + widths * widths));
    }

    private static float[] lost() {
        float[] lost = new float[FAR * STEPS + 1];
        for (int i = 0; i < lost.length; i++) lost[i] = exactly((double) i / STEPS);
        return lost;
    }

    /** One value per position for a tile at {@code place}. */
    static float[] row(double[] positions, double place, double width) {
        float[] row = new float[positions.length];
        for (int i = 0; i < row.length; i++) row[i] = at((positions[i] - place) / width);
        return row;
    }
}
