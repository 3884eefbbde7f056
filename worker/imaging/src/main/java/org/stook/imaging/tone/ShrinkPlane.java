package org.stook.imaging.tone;

import java.util.Arrays;
import org.stook.imaging.frame.Plane;

/** Area averages of one plane: every input pixel counts by the area that it covers of the output pixel. */
final class ShrinkPlane {
    private final Plane in;
    private final Plane out;
    private final float[] light;
    private final EncodingTable encoding;
    private final double[] row;
    private final double[] sums;

    ShrinkPlane(Plane in, Plane out, float[] light, EncodingTable encoding) {
        this.in = in;
        this.out = out;
        this.light = light;
        this.encoding = encoding;
        this.row = new double[in.width()];
        this.sums = new double[out.width()];
    }

    void run() {
        double scaleY = (double) in.height() / out.height();
        double area = scaleY * in.width() / out.width();
        for (int y = 0; y < out.height(); y++) {
            Arrays.fill(sums, 0);
            double top = y * scaleY;
            double bottom = Math.min(in.height(), (y + 1) * scaleY);
            for (int from = (int) top; from < bottom; from++) {
                double share = Math.min(bottom, from + 1) - Math.max(top, from);
                readRow(from);
                addRow(share);
            }
            for (int x = 0; x < sums.length; x++) {
                out.set(x, y, encoding.encode(Math.max(0, Math.min(1, sums[x] / area))));
            }
        }
    }

    private void readRow(int y) {
        for (int x = 0; x < row.length; x++) {
            float value = Math.max(0, Math.min(1, in.at(x, y)));
            row[x] = light[(int) (value * (light.length - 1) + 0.5f)];
        }
    }

    private void addRow(double share) {
        double scaleX = (double) in.width() / out.width();
        for (int x = 0; x < sums.length; x++) {
            double left = x * scaleX;
            double right = Math.min(row.length, (x + 1) * scaleX);
            double sum = 0;
            for (int from = (int) left; from < right; from++) {
                sum += row[from] * (Math.min(right, from + 1) - Math.max(left, from));
            }
            sums[x] += share * sum;
        }
    }
}
