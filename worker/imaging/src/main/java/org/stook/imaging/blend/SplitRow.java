package org.stook.imaging.blend;

/**
 * A row of a picture taken apart into its even and its odd columns, with one sample more at each end, so that the filters of
 * {@link Binomial} are loops over lines that share one index (see {@link Phases}). Column 2 i is {@code even[i + 1]}, column
 * 2 i + 1 is {@code odd[i + 1]}.
 */
final class SplitRow {
    final int width;
    final float[] even;
    final float[] odd;

    SplitRow(int width) {
        this.width = width;
        this.even = new float[Binomial.half(width) + 2];
        this.odd = new float[even.length];
    }

    /** Fills it with row {@code y} of a frame. */
    void read(LumaRows rows, int y) {
        rows.read(y, even, odd);
        mirrorEnds();
    }

    /** Mirrors what lies beyond the ends about the outermost pixels. */
    void mirrorEnds() {
        int last = even.length - 1;
        even[0] = at(Binomial.mirror(-2, width));
        odd[0] = at(Binomial.mirror(-1, width));
        if (width % 2 == 1) odd[last - 1] = at(Binomial.mirror(width, width));
        even[last] = at(Binomial.mirror(width + width % 2, width));
    }

    private float at(int column) {
        return column % 2 == 0 ? even[column / 2 + 1] : odd[column / 2 + 1];
    }

    /** What rows are filtered in. One thread. */
    static final class Filter {
        private final float[] left;
        private final float[] right;
        private final float[] oddLeft;
        private final SplitRow line;

        Filter(int width) {
            this.line = new SplitRow(width);
            this.left = new float[line.even.length];
            this.right = new float[left.length];
            this.oddLeft = new float[left.length];
        }

        /**
         * Row {@code y} of the picture at half its size.
         *
         * @param rows of the picture, with their ends mirrored
         * @param out sample i is {@code out[i + 1]}; the ends are repeated
         */
        void halve(SplitRow[] rows, int y, float[] out) {
            int h = rows.length;
            SplitRow a = rows[Binomial.mirror(2 * y - 2, h)];
            SplitRow b = rows[Binomial.mirror(2 * y - 1, h)];
            SplitRow c = rows[2 * y];
            SplitRow d = rows[Binomial.mirror(2 * y + 1, h)];
            SplitRow e = rows[Binomial.mirror(2 * y + 2, h)];
            down(a.even, b.even, c.even, d.even, e.even, line.even);
            down(a.odd, b.odd, c.odd, d.odd, e.odd, line.odd);
            shift(line.even);
            System.arraycopy(line.odd, 0, oddLeft, 1, oddLeft.length - 1);
            across(line.even, line.odd, out);
            repeatEnds(out);
        }

        private static void down(float[] a, float[] b, float[] c, float[] d, float[] e, float[] out) {
            for (int x = 0; x < out.length; x++) out[x] = (a[x] + e[x] + 4 * (b[x] + d[x]) + 6 * c[x]) * (1 / 16f);
        }

        private void across(float[] even, float[] odd, float[] out) {
            float[] l = left;
            float[] r = right;
            float[] o = oddLeft;
            for (int x = 0; x < out.length; x++) {
                out[x] = (l[x] + r[x] + 4 * (o[x] + odd[x]) + 6 * even[x]) * (1 / 16f);
            }
        }

        /** What stands left and right of each sample. */
        private void shift(float[] in) {
            System.arraycopy(in, 0, left, 1, in.length - 1);
            System.arraycopy(in, 1, right, 0, in.length - 1);
        }

        private static void repeatEnds(float[] line) {
            line[0] = line[1];
            line[line.length - 1] = line[line.length - 2];
        }

        /**
         * The squares of what row {@code y} has more than the picture at half size, enlarged.
         *
         * @param half rows as {@link #halve} makes them
         */
        void squareBand(float[][] half, int y, SplitRow row, SplitRow out) {
            int j = y / 2;
            float[] below = half[Math.min(j + 1, half.length - 1)];
            if (y % 2 == 0) between(half[Math.max(j - 1, 0)], half[j], below, line.even);
            else between(half[j], below, line.even);
            shift(line.even);
            squares(row.even, row.odd, line.even, out.even, out.odd);
            out.mirrorEnds();
        }

        private static void between(float[] above, float[] here, float[] below, float[] out) {
            for (int x = 0; x < out.length; x++) out[x] = (above[x] + below[x] + 6 * here[x]) * 0.125f;
        }

        private static void between(float[] here, float[] below, float[] out) {
            for (int x = 0; x < out.length; x++) out[x] = (here[x] + below[x]) * 0.5f;
        }

        private void squares(float[] even, float[] odd, float[] here, float[] toEven, float[] toOdd) {
            float[] l = left;
            float[] r = right;
            for (int x = 0; x < here.length; x++) {
                float d = even[x] - (l[x] + r[x] + 6 * here[x]) * 0.125f;
                toEven[x] = d * d;
            }
            for (int x = 0; x < here.length; x++) {
                float d = odd[x] - (here[x] + r[x]) * 0.5f;
                toOdd[x] = d * d;
            }
        }
    }
}
