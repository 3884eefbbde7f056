package org.stook.imaging.frame;

/**
 * One channel of pixels: {@code width * height} floats, row-major. The array is handed out, not copied: whoever fills a
 * plane owns it until it is passed on.
 */
public final class Plane {
    private final int width;
    private final int height;
    private final float[] samples;

    public Plane(int width, int height) {
        this(width, height, LargeArrays.floats(Math.multiplyExact(requirePositive(width), requirePositive(height))));
    }

    /** Wraps {@code samples}, which must hold at least {@code width * height} values. */
    public Plane(int width, int height, float[] samples) {
        if (samples.length < Math.multiplyExact(requirePositive(width), requirePositive(height))) {
            throw new IllegalArgumentException("a plane of %d x %d needs %d samples, got %d"
                    .formatted(width, height, width * height, samples.length));
        }
        this.width = width;
        this.height = height;
        this.samples = samples;
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** The live sample array, row-major; index {@code y * width + x}. */
    public float[] samples() {
        return samples;
    }

    public float at(int x, int y) {
        return samples[y * width + x];
    }

    public void set(int x, int y, float value) {
        samples[y * width + x] = value;
    }

    /** A copy of a part: rows of samples. */
    public float[][] cut(Area part) {
        float[][] rows = new float[part.height()][part.width()];
        for (int y = 0; y < part.height(); y++) {
            System.arraycopy(samples, (part.y() + y) * width + part.x(), rows[y], 0, part.width());
        }
        return rows;
    }

    /** Copies rows of samples into a part; rows may be longer than it is wide. */
    public void put(float[][] rows, Area part) {
        for (int y = 0; y < part.height(); y++) {
            System.arraycopy(rows[y], 0, samples, (part.y() + y) * width + part.x(), part.width());
        }
    }

    public boolean sameSizeAs(Plane other) {
        return width == other.width && height == other.height;
    }

    private static int requirePositive(int extent) {
        if (extent <= 0)
            throw new IllegalArgumentException("a plane's width and height must be positive, got " + extent);
        return extent;
    }
}
