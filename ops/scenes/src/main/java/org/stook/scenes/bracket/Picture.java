package org.stook.scenes.bracket;

import java.util.stream.IntStream;
import org.stook.scenes.optics.Srgb;

/**
 * Red, green and blue planes, row by row, samples nominally 0 to 1. Whether they are linear light or encoded is said where
 * a picture is handed out.
 */
public final class Picture {
    private final int width;
    private final int height;
    private final float[][] planes;

    private Picture(int width, int height) {
        this.width = width;
        this.height = height;
        planes = new float[3][width * height];
    }

    /** A black picture. */
    public static Picture black(int width, int height) {
        return new Picture(width, height);
    }

    /** Columns. */
    public int width() {
        return width;
    }

    /** Rows. */
    public int height() {
        return height;
    }

    /** The three planes themselves, not copies: a picture belongs to whoever asked for it. */
    public float[][] planes() {
        return planes;
    }

    /** This linear picture encoded by sRGB, clipped to 0..1. */
    public Picture encoded() {
        Picture encoded = black(width, height);
        IntStream.range(0, height).parallel().forEach(y -> {
            for (int c = 0; c < 3; c++) {
                for (int p = y * width; p < (y + 1) * width; p++) {
                    encoded.planes[c][p] = Srgb.encode(planes[c][p]);
                }
            }
        });
        return encoded;
    }

    /** One sample: channel 0 red, 1 green, 2 blue. */
    public float at(int channel, int x, int y) {
        return planes[channel][y * width + x];
    }
}
