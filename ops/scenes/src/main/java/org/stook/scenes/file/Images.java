package org.stook.scenes.file;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.DataBufferUShort;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.util.stream.IntStream;
import org.stook.scenes.bracket.Picture;

/** Encoded pictures as images of the Java platform. */
final class Images {
    private Images() {}

    static BufferedImage of(Picture encoded, int bits) {
        return bits == 16 ? words(encoded) : bytes(encoded);
    }

    private static BufferedImage bytes(Picture encoded) {
        BufferedImage image = new BufferedImage(encoded.width(), encoded.height(), BufferedImage.TYPE_3BYTE_BGR);
        byte[] data = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        float[][] planes = encoded.planes();
        IntStream.range(0, encoded.height()).parallel().forEach(y -> {
            for (int p = y * encoded.width(); p < (y + 1) * encoded.width(); p++) {
                for (int c = 0; c < 3; c++) data[3 * p + 2 - c] = (byte) (planes[c][p] * 255 + 0.5f);
            }
        });
        return image;
    }

    private static BufferedImage words(Picture encoded) {
        short[] data = new short[3 * encoded.width() * encoded.height()];
        float[][] planes = encoded.planes();
        IntStream.range(0, encoded.height()).parallel().forEach(y -> {
            for (int p = y * encoded.width(); p < (y + 1) * encoded.width(); p++) {
                for (int c = 0; c < 3; c++) data[3 * p + c] = (short) (int) (planes[c][p] * 65535 + 0.5f);
            }
        });
        return interleaved(data, encoded.width(), encoded.height(), 3);
    }

    /** A grey image of 16 bits a sample. */
    static BufferedImage grey16(short[] data, int width, int height) {
        return interleaved(data, width, height, 1);
    }

    private static BufferedImage interleaved(short[] data, int width, int height, int channels) {
        int[] offsets = IntStream.range(0, channels).toArray();
        WritableRaster raster = Raster.createInterleavedRaster(
                new DataBufferUShort(data, data.length), width, height, channels * width, channels, offsets, null);
        ColorSpace space = ColorSpace.getInstance(channels == 3 ? ColorSpace.CS_sRGB : ColorSpace.CS_GRAY);
        return new BufferedImage(
                new ComponentColorModel(space, false, false, Transparency.OPAQUE, DataBuffer.TYPE_USHORT),
                raster,
                false,
                null);
    }
}
