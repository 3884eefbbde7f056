package org.stook.imaging.survey;

import org.stook.imaging.frame.Plane;

/**
 * How sharp a frame is along its borders, in strips as narrow as a hundredth of its long side: finer than the tiles of a
 * {@link FrameSurvey}, for whether a subject keeps clear of the border.
 *
 * @param energy band-pass energy divided by the square of the mean level, for each side (left, top, right, bottom), strip from the
 *     border inwards and cell along the side (from the top or the left)
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
public record BorderDetail(float[] energy) {
    /** Sides of a frame. */
    public enum Side {
        LEFT,
        TOP,
        RIGHT,
        BOTTOM
    }

    /** Width of a strip as a share of the frame's long side. */
    static final double STRIP = 0.01;

    static final int STRIPS = 6;
    static final int CELLS = 20;
    private static final int COUNT = Side.values().length * STRIPS * CELLS;

    public BorderDetail {
        if (energy.length != COUNT) {
            throw new IllegalArgumentException("expected " + COUNT + " energies, got " + energy.length);
        }
    }

    /**
     * @param luma as for {@link FrameSurveyor#survey}
     * @param noise of that, as in {@link FrameSurvey.Exposure#noise()}
     */
    public static BorderDetail of(Plane luma, double noise) {
        float[] energy = new float[COUNT];
        int depth = (int) Math.max(STRIPS, Math.ceil(STRIPS * STRIP * Math.max(luma.width(), luma.height())));
        for (Side side : Side.values()) {
            Plane border = border(luma, side, Math.min(depth, across(luma, side)));
            Plane band = OctaveBand.of(border);
            double added = noise * noise * Noise.bandGain(0);
            Tiles cells = new Tiles(CELLS, STRIPS);
            float[] squares = cells.meanSquares(band);
            float[] means = cells.means(border);
            for (int i = 0; i < squares.length; i++) {
                double level = Math.max(0, means[i]) + 0.02;
                energy[side.ordinal() * squares.length + i] =
                        (float) (Math.max(0, squares[i] - added) / (level * level));
            }
        }
        return new BorderDetail(energy);
    }

    /** Of a frame whose border nobody looked at: nothing is found there. */
    public static BorderDetail unknown() {
        return new BorderDetail(new float[COUNT]);
    }

    double at(Side side, int strip, int cell) {
        return energy[(side.ordinal() * STRIPS + strip) * CELLS + cell];
    }

    private static int across(Plane luma, Side side) {
        return isUpright(side) ? luma.width() : luma.height();
    }

    private static boolean isUpright(Side side) {
        return side == Side.LEFT || side == Side.RIGHT;
    }

    /** The part along one side, turned so that the border is its first row. */
    private static Plane border(Plane luma, Side side, int depth) {
        int along = isUpright(side) ? luma.height() : luma.width();
        Plane border = new Plane(along, depth);
        for (int d = 0; d < depth; d++) {
            for (int i = 0; i < along; i++) {
                border.set(
                        i,
                        d,
                        switch (side) {
                            case LEFT -> luma.at(d, i);
                            case RIGHT -> luma.at(luma.width() - 1 - d, i);
                            case TOP -> luma.at(i, d);
                            case BOTTOM -> luma.at(i, luma.height() - 1 - d);
                        });
            }
        }
        return border;
    }
}
