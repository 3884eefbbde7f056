package org.stook.imaging.composite.view;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.DataBufferUShort;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** Grey PNG files. */
final class Png {
    private Png() {}

    static void writeSixteen(Path file, int width, int height, short[] codes) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_USHORT_GRAY);
        short[] to = ((DataBufferUShort) image.getRaster().getDataBuffer()).getData();
        System.arraycopy(codes, 0, to, 0, to.length);
        write(image, file);
    }

    static void writeEight(Path file, int width, int height, byte[] codes) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        byte[] to = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        System.arraycopy(codes, 0, to, 0, to.length);
        write(image, file);
    }

    private static void write(BufferedImage image, Path file) throws IOException {
        if (!ImageIO.write(image, "png", file.toFile())) {
            throw new IllegalStateException("this Java runtime has no PNG writer (module java.desktop)");
        }
    }
}
