package org.stook.imaging.codec;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Iterator;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.IccProfile;

/**
 * Writes a baseline JPEG, for previews: 8 bit, with the profile embedded (ICC.1:2022 annex B.4). Values are rounded half
 * up, as in {@link TiffWriter}. To shrink the frame first is the caller's business: averages belong in linear light.
 */
public final class JpegWriter {
    private JpegWriter() {}

    /**
     * Writes the whole frame. The stream is neither closed nor flushed.
     *
     * @param quality 0 (smallest) to 1 (best)
     */
    public static void write(Frame frame, double quality, Optional<IccProfile> profile, OutputStream out)
            throws IOException {
        if (!(quality >= 0 && quality <= 1)) {
            throw new IllegalArgumentException("JPEG quality must be 0 to 1, got " + quality);
        }
        byte[] plain = encode(image(frame), (float) quality);
        // The profile goes right behind SOI and the JFIF segment.
        int jfifEnd = 4 + (((plain[4] & 0xFF) << 8) | (plain[5] & 0xFF));
        out.write(plain, 0, jfifEnd);
        if (profile.isPresent()) JpegProfile.write(profile.get().bytes(), out);
        out.write(plain, jfifEnd, plain.length - jfifEnd);
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
