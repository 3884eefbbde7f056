package org.stook.comparison;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.stook.imaging.frame.Frame;

/** Reads PNG, JPEG and TIFF pictures of 8 or 16 bits by the Java runtime's own readers, not by Stook's. */
public final class Pictures {
    private Pictures() {}

    /** @return encoded values, code / (2^bits - 1) */
    public static Frame read(Path file) throws IOException {
        BufferedImage image = ImageIO.read(file.toFile());
        if (image == null) throw new IOException(file + ": expected a PNG, JPEG or TIFF picture, found none");
        Raster raster = image.getRaster();
        int channels = raster.getNumBands() >= 3 ? 3 : 1;
        Frame frame = Frame.blank(raster.getWidth(), raster.getHeight(), channels);
        // JPEG readers give a packed or byte raster in any channel order; the colour model knows it.
        if (raster.getSampleModel().getSampleSize(0) == 8 && channels == 3) {
            fillFromRgb(image, frame);
        } else {
            fillFromSamples(raster, frame);
        }
        return frame;
    }

    private static void fillFromRgb(BufferedImage image, Frame frame) {
        int[] row = new int[frame.width()];
        for (int y = 0; y < frame.height(); y++) {
            image.getRGB(0, y, frame.width(), 1, row, 0, frame.width());
            for (int x = 0; x < row.length; x++) {
                for (int c = 0; c < 3; c++) frame.plane(c).set(x, y, (row[x] >> (16 - 8 * c) & 0xff) / 255f);
            }
        }
    }

    private static void fillFromSamples(Raster raster, Frame frame) {
        float peak = (1 << raster.getSampleModel().getSampleSize(0)) - 1;
        int[] row = new int[frame.width()];
        for (int c = 0; c < frame.channels(); c++) {
            for (int y = 0; y < frame.height(); y++) {
                raster.getSamples(0, y, frame.width(), 1, c, row);
                for (int x = 0; x < row.length; x++) frame.plane(c).set(x, y, row[x] / peak);
            }
        }
    }
}
