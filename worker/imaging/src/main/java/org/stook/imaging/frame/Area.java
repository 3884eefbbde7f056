package org.stook.imaging.frame;

/**
 * A rectangle of whole pixels: columns {@code x .. x + width - 1}, rows {@code y .. y + height - 1}.
 */
public record Area(int x, int y, int width, int height) {
    public Area {
        if (width <= 0 || height <= 0) {
            throw new IllegalArgumentException("an area must not be empty, got %d x %d".formatted(width, height));
        }
    }

    public static Area whole(int width, int height) {
        return new Area(0, 0, width, height);
    }

    public boolean contains(Area other) {
        return other.x >= x
                && other.y >= y
                && other.x + other.width <= x + width
                && other.y + other.height <= y + height;
    }

    public long pixels() {
        return (long) width * height;
    }
}
