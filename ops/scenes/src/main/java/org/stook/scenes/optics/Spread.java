package org.stook.scenes.optics;

/**
 * Gathers the light of one sheet in one tile of a picture: every point spreads over its own disc. The share that the
 * sheet covers comes out as light arrived / light that would have arrived if the sheet went on for ever; thus a
 * slanted surface keeps its brightness and a defocused rim turns see-through.
 */
public final class Spread {
    /** Values a point: 1, cover, then red, green and blue times cover. */
    public static final int CHANNELS = 5;

    private final int width;
    private final int height;
    private final int margin;
    private final int stride;
    private final float[] differences;

    /**
     * @param width of the tile, pixels
     * @param height of the tile, pixels
     * @param reach how far outside the tile points may lie, at least their greatest blur radius + 1, pixels
     */
    public Spread(int width, int height, int reach) {
        this.width = width;
        this.height = height;
        // Points to the left start their rows left of the tile; there has to be room for that.
        margin = 2 * reach + 1;
        stride = margin + width;
        differences = new float[stride * height * CHANNELS];
    }

    /**
     * Spreads a row of points, neighbours of nearly the same radius together.
     *
     * @param x column of the first point in the tile; may lie outside by the reach
     * @param y row in the tile; may lie outside
     * @param radii radius of the circle of confusion of each point in pixels, negative to leave a point out
     * @param light the channels of each point
     * @param from first point in those arrays
     * @param count how many points
     */
    public void addRow(int x, int y, float[] radii, float[] light, int from, int count) {
        int start = 0;
        while (start < count) {
            if (radii[from + start] < 0) {
                start++;
                continue;
            }
            DiscKernel kernel = DiscKernel.ofRadius(radii[from + start]);
            int end = start + 1;
            while (end < count && radii[from + end] >= 0 && DiscKernel.ofRadius(radii[from + end]) == kernel) end++;
            add(x + start, y, kernel, light, (from + start) * CHANNELS, end - start);
            start = end;
        }
    }

    private void add(int x, int y, DiscKernel kernel, float[] light, int from, int count) {
        int reach = kernel.reach;
        if (x + count + reach < 0 || x - reach >= width) return;
        int firstRow = Math.max(-reach, -y);
        int lastRow = Math.min(reach, height - 1 - y);
        for (int row = firstRow; row <= lastRow; row++) {
            int base = (y + row) * stride;
            int end = kernel.rowStart[row + reach + 1];
            for (int e = kernel.rowStart[row + reach]; e < end; e++) {
                int col = x + kernel.column[e] + margin;
                int values = Math.min(count, stride - col) * CHANNELS;
                addScaled((base + col) * CHANNELS, kernel.weight[e], light, from, values);
            }
        }
    }

    private void addScaled(int at, float weight, float[] light, int from, int values) {
        for (int i = 0; i < values; i++) differences[at + i] += weight * light[from + i];
    }

    /** Lays what was gathered over the picture: {@code rgb} holds three values a pixel of this tile, row by row. */
    public void over(float[] rgb) {
        for (int row = 0; row < height; row++) {
            double[] sums = new double[CHANNELS];
            int at = row * stride * CHANNELS;
            for (int col = -margin; col < width; col++, at += CHANNELS) {
                for (int c = 0; c < CHANNELS; c++) sums[c] += differences[at + c];
                if (col >= 0 && sums[1] >= 1e-5) lay(sums, rgb, 3 * (row * width + col));
            }
        }
    }

    private static void lay(double[] sums, float[] rgb, int at) {
        double through = Math.max(0, 1 - sums[1] / sums[0]);
        for (int c = 0; c < 3; c++) rgb[at + c] = (float) (sums[2 + c] / sums[0] + through * rgb[at + c]);
    }
}
