package org.stook.imaging.survey;

import java.util.List;

/**
 * What the sweep covers.
 *
 * @param tilesX tiles along a row
 * @param tilesY tiles along a column
 * @param peaks for each tile (row-major) the rank in the sweep, 0 to frames - 1 with fractions, where it is sharpest; NaN
 *     where the tile shows too little texture, or the sweep has fewer than four frames
 * @param openAtFirst share of the tiles with a peak that lie before the first frame with nothing between: the sweep began
 *     too late. A backdrop or foreground that stands off does not count
 * @param openAtLast likewise behind the last frame: the sweep ended too early
 * @param gaps steps between neighbours that are too wide
 */
public record Coverage(int tilesX, int tilesY, double[] peaks, double openAtFirst, double openAtLast, List<Gap> gaps) {
    /** An end is open when more of the subject than this lies beyond it; whole sweeps show up to 0.03. */
    private static final double OPEN = 0.04;

    public Coverage {
        gaps = List.copyOf(gaps);
    }

    /** Whether the sweep began too late. */
    public boolean isOpenAtFirst() {
        return openAtFirst > OPEN;
    }

    /** Whether the sweep ended too early. */
    public boolean isOpenAtLast() {
        return openAtLast > OPEN;
    }

    /**
     * A step too wide.
     *
     * @param before index in capture order of the frame before the gap
     * @param after index in capture order of the frame after it
     * @param steps how many usual steps wide it is at least
     */
    public record Gap(int before, int after, double steps) {}
}
