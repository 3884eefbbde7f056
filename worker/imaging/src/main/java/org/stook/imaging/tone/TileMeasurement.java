package org.stook.imaging.tone;

import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Samples;

/** The sums behind {@link TileLight}. One use. */
final class TileMeasurement {
    private static final int ACROSS = 24;
    private static final int DOWN = 16;
    /** Share of each side that is looked at; near the border, tiles of neighbours are not whole. */
    private static final double MIDDLE = 0.9;

    private static final double DARKEST = 0.003;
    private static final double MOST_CLIPPED = 0.01;

    private final LightGrid grid;
    private final Samples samples;
    private final Placement placement;
    private final int channels;
    private final double[][] light;
    private final int across;
    private final int down;
    private final double tileWidth;
    private final double tileHeight;
    private final double left;
    private final double top;
    private final double[] sums;
    private final long[] clipped;
    private final long[] counts;

    TileMeasurement(LightGrid grid, ColourSpace space, Placement placement) {
        this.grid = grid;
        this.samples = grid.picked();
        this.placement = placement;
        this.channels = samples.channels();
        this.light = lightTables(samples, space);
        this.across = Math.min(ACROSS, grid.width());
        this.down = Math.min(DOWN, grid.height());
        this.tileWidth = MIDDLE * grid.width() / across;
        this.tileHeight = MIDDLE * grid.height() / down;
        // In pixel edges, half a pixel before pixel centres.
        this.left = grid.width() * (1 - MIDDLE) / 2 - 0.5;
        this.top = grid.height() * (1 - MIDDLE) / 2 - 0.5;
        this.sums = new double[across * down * channels];
        this.clipped = new long[across * down];
        this.counts = new long[across * down];
    }

    private static double[][] lightTables(Samples samples, ColourSpace space) {
        double[][] tables = new double[samples.channels()][];
        for (int c = 0; c < tables.length; c++) {
            boolean shared = c > 0 && space.curve(c).equals(space.curve(c - 1));
            tables[c] = shared ? tables[c - 1] : lightTable(samples.maxCode(), space.curve(c));
        }
        return tables;
    }

    private static double[] lightTable(int maxCode, TransferCurve curve) {
        double[] table = new double[maxCode + 1];
        for (int code = 0; code <= maxCode; code++) table[code] = curve.toLight(code / (double) maxCode);
        return table;
    }

    TileLight measure() {
        Placement toReference = placement.inverse();
        int[] codes = new int[samples.width() * channels];
        for (int j = 0; j < samples.height(); j++) {
            samples.row(j, codes);
            double y = j * (double) grid.stepY();
            for (int i = 0; i < samples.width(); i++) {
                double x = i * (double) grid.stepX();
                double column = (toReference.x(x, y) - left) / tileWidth;
                double row = (toReference.y(x, y) - top) / tileHeight;
                boolean inside = column >= 0 && column < across && row >= 0 && row < down;
                if (inside) add(codes, i * channels, ((int) row) * across + (int) column);
            }
        }
        return result();
    }

    private void add(int[] codes, int at, int tile) {
        boolean over = false;
        for (int c = 0; c < channels; c++) {
            int code = codes[at + c];
            sums[tile * channels + c] += light[c][code];
            over |= code == samples.maxCode();
        }
        counts[tile]++;
        if (over) clipped[tile]++;
    }

    private TileLight result() {
        boolean[] usable = new boolean[counts.length];
        for (int tile = 0; tile < usable.length; tile++) {
            double darkest = 1;
            for (int c = 0; c < channels; c++) {
                sums[tile * channels + c] /= Math.max(1, counts[tile]);
                darkest = Math.min(darkest, sums[tile * channels + c]);
            }
            usable[tile] = darkest >= DARKEST && clipped[tile] <= MOST_CLIPPED * counts[tile] && isWhole(tile);
        }
        return new TileLight(channels, sums, usable);
    }

    /** Whether all four corners of the tile lie in the frame. */
    private boolean isWhole(int tile) {
        boolean whole = true;
        for (int corner = 0; corner < 4; corner++) {
            double x = left + (tile % across + corner % 2) * tileWidth;
            double y = top + (tile / across + corner / 2) * tileHeight;
            double frameX = placement.x(x, y);
            double frameY = placement.y(x, y);
            whole &= frameX >= -0.5 && frameY >= -0.5 && frameX <= grid.width() - 0.5 && frameY <= grid.height() - 0.5;
        }
        return whole;
    }
}
