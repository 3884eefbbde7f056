package org.stook.imaging.survey;

/** How much sharpness a band has lost (natural logarithm) at each frame, for tiles at equally spaced places. */
final class FallTable {
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

    /** One value per position for a tile at {@code place}. */
    static float[] row(double[] positions, double place, double width) {
        float[] row = new float[positions.length];
        for (int i = 0; i < row.length; i++) {
            double r = (positions[i] - place) / width;
            row[i] = (float) (-1.5 * Math.log(1 + r * r));
        }
        return row;
    }
}
