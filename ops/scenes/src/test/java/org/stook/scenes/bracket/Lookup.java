package org.stook.scenes.bracket;

/** Six-tap Lanczos look-up between pixels, for tests. */
final class Lookup {
    private Lookup() {}

    static double lanczos(float[] plane, int width, double x, double y) {
        int left = (int) Math.floor(x) - 2;
        int top = (int) Math.floor(y) - 2;
        double sum = 0;
        double weights = 0;
        for (int row = top; row < top + 6; row++) {
            for (int col = left; col < left + 6; col++) {
                double weight = lanczos(x - col) * lanczos(y - row);
                sum += weight * plane[row * width + col];
                weights += weight;
            }
        }
        return sum / weights;
    }

    private static double lanczos(double t) {
        if (Math.abs(t) < 1e-9) return 1;
        double a = Math.PI * t;
        return Math.abs(t) >= 3 ? 0 : 3 * Math.sin(a) * Math.sin(a / 3) / (a * a);
    }
}
