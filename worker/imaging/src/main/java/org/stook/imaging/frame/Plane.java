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
        this(width, height, new float[Math.multiplyExact(requirePositive(width), requirePositive(height))]);
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

    public boolean sameSizeAs(Plane other) {
        return width == other.width && height == other.height;
    }

    private static int requirePositive(int extent) {
        if (extent <= 0)
            throw new IllegalArgumentException("a plane's width and height must be positive, got " + extent);
        return extent;
    }
}
