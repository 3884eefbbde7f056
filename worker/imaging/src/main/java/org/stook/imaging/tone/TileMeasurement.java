package org.stook.imaging.tone;

import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Samples;

/** The sums behind {@link TileLight}. One use. */
final class TileMeasurement {
    private static final int ACROSS = 24;
    private static final int DOWN = 16;
    /** Share of each side that is looked at; near the border, tiles of neighbours are not whole. */
    private static final double MIDDLE = 0.9;
    /** Every so many rows and columns are enough for means far steadier than what they are compared for. */
    private static final int ENOUGH = 1200;

    private static final double DARKEST = 0.003;
    private static final double MOST_CLIPPED = 0.01;

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

    TileMeasurement(Samples samples, ColourSpace space, Placement placement) {
        this.samples = samples;
        this.placement = placement;
        this.channels = samples.channels();
        this.light = lightTables(samples, space);
        this.across = Math.min(ACROSS, samples.width());
        this.down = Math.min(DOWN, samples.height());
        this.tileWidth = MIDDLE * samples.width() / across;
        this.tileHeight = MIDDLE * samples.height() / down;
        // In pixel edges, half a pixel before pixel centres.
        this.left = samples.width() * (1 - MIDDLE) / 2 - 0.5;
        this.top = samples.height() * (1 - MIDDLE) / 2 - 0.5;
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
        int stepX = Math.max(1, samples.width() / ENOUGH);
        int stepY = Math.max(1, samples.height() / ENOUGH);
        int[] codes = new int[samples.width() * channels];
        for (int y = 0; y < samples.height(); y += stepY) {
            samples.row(y, codes);
            for (int x = 0; x < samples.width(); x += stepX) {
                double column = (toReference.x(x, y) - left) / tileWidth;
                double row = (toReference.y(x, y) - top) / tileHeight;
                boolean inside = column >= 0 && column < across && row >= 0 && row < down;
                if (inside) add(codes, x * channels, ((int) row) * across + (int) column);
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
            whole &= frameX >= -0.5
                    && frameY >= -0.5
                    && frameX <= samples.width() - 0.5
                    && frameY <= samples.height() - 0.5;
        }
        return whole;
    }
}
