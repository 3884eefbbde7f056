package org.stook.imaging.codec;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Iterator;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.stook.imaging.frame.Frame;

/**
 * Writes a baseline JPEG: 8 bit, with Exif, XMP and the profile embedded (ICC.1:2022 annex B.4). Values are rounded half up,
 * as in {@link TiffWriter}. To shrink the frame first is the caller's business: averages belong in linear light.
 */
public final class JpegWriter {
    private static final int JFIF_UNITS = 13;

    private JpegWriter() {}

    /** Writes the whole frame. The stream is neither closed nor flushed. */
    public static void write(Frame frame, JpegTags tags, OutputStream out) throws IOException {
        byte[] plain = encode(image(frame), (float) tags.quality());
        // Ours goes right behind SOI and the JFIF segment.
        int jfifEnd = 4 + (((plain[4] & 0xFF) << 8) | (plain[5] & 0xFF));
        setDensity(plain, tags.pixelsPerInch());
        out.write(plain, 0, jfifEnd);
        JpegMetadata.write(frame, tags, out);
        if (tags.profile().isPresent()) JpegProfile.write(tags.profile().get().bytes(), out);
        out.write(plain, jfifEnd, plain.length - jfifEnd);
    }

    /** JFIF counts in whole numbers of 16 bit; Exif has the exact one. */
    private static void setDensity(byte[] file, double pixelsPerInch) {
        long density = Math.round(pixelsPerInch);
        if (density < 1 || density > 0xFFFF) return;
        file[JFIF_UNITS] = 1; // an inch
        for (int at = JFIF_UNITS + 1; at < JFIF_UNITS + 5; at += 2) {
            file[at] = (byte) (density >> 8);
            file[at + 1] = (byte) density;
        }
    }

    /**
     * Writes 8-bit codes, without a profile: a viewer takes them for sRGB. The stream is neither closed nor flushed.
     *
     * @param codes interleaved, row by row; at least {@code width * height * channels}
     * @param channels 1, or 3 for red, green, blue
     */
    public static void write(byte[] codes, int width, int height, int channels, double quality, OutputStream out)
            throws IOException {
        boolean grey = channels == 1;
        BufferedImage image =
                new BufferedImage(width, height, grey ? BufferedImage.TYPE_BYTE_GRAY : BufferedImage.TYPE_3BYTE_BGR);
        byte[] to = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        if (grey) {
            System.arraycopy(codes, 0, to, 0, to.length);
        } else {
            for (int i = 0; i < to.length; i += 3) {
                to[i] = codes[i + 2];
                to[i + 1] = codes[i + 1];
                to[i + 2] = codes[i];
            }
        }
        out.write(encode(image, (float) quality));
    }

    private static BufferedImage image(Frame frame) {
        boolean grey = frame.channels() == 1;
        BufferedImage image = new BufferedImage(
                frame.width(), frame.height(), grey ? BufferedImage.TYPE_BYTE_GRAY : BufferedImage.TYPE_3BYTE_BGR);
        byte[] codes = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        int channels = frame.channels();
        for (int c = 0; c < channels; c++) {
            float[] samples = frame.plane(c).samples();
            int to = channels - 1 - c; // blue comes first
            for (int i = 0; to < codes.length; i++, to += channels) codes[to] = (byte) TiffWriter.code(samples[i], 255);
        }
        return image;
    }

    private static byte[] encode(BufferedImage image, float quality) throws IOException {
        ImageWriter writer = runtimeWriter();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam parameters = writer.getDefaultWriteParam();
            parameters.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            parameters.setCompressionQuality(quality);
            writer.setOutput(stream);
            writer.write(null, new IIOImage(image, null, null), parameters);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    private static ImageWriter runtimeWriter() {
        for (Iterator<ImageWriter> all = ImageIO.getImageWritersByFormatName("jpeg"); all.hasNext(); ) {
            ImageWriter writer = all.next();
            if ("java.desktop".equals(writer.getClass().getModule().getName())) return writer;
        }
        throw new IllegalStateException("this Java runtime has no JPEG writer (module java.desktop)");
    }
}
