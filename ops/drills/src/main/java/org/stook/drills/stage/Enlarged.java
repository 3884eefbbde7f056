package org.stook.drills.stage;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.SplittableRandom;
import javax.imageio.ImageIO;

/** Frames as large as the largest cameras' out of small ones, which to render so large would take an hour. */
final class Enlarged {
    /** Largest deviation in codes, so that a tile of it is as long as one of a photograph. */
    private static final int NOISE = 5;

    private Enlarged() {}

    /** @param seed of the noise, another for every frame */
    static byte[] of(byte[] jpeg, int width, int height, long seed) {
        try {
            BufferedImage large = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
            Graphics2D graphics = large.createGraphics();
            graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            graphics.drawImage(ImageIO.read(new ByteArrayInputStream(jpeg)), 0, 0, width, height, null);
            graphics.dispose();
            grain(((DataBufferByte) large.getRaster().getDataBuffer()).getData(), seed);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageIO.write(large, "jpeg", bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void grain(byte[] codes, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < codes.length; i++) {
            int code = (codes[i] & 0xff) + random.nextInt(2 * NOISE + 1) - NOISE;
            codes[i] = (byte) Math.max(0, Math.min(255, code));
        }
    }
}
