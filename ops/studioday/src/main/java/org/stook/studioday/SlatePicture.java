package org.stook.studioday;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.MultiFormatWriter;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.Map;
import java.util.SplittableRandom;
import org.stook.scenes.bracket.Picture;

/** Draws a frame of a label: light paper at some turn on a grey ground, a code on it. */
final class SlatePicture {
    private static final BarcodeFormat[] FORMATS = {
        BarcodeFormat.QR_CODE, BarcodeFormat.DATA_MATRIX, BarcodeFormat.CODE_128
    };
    private static final Color GROUND = new Color(88, 90, 94);
    private static final Color PAPER = new Color(232, 231, 226);
    private static final Color INK = new Color(34, 34, 38);

    private SlatePicture() {}

    /** @param torn whether a strip is missing, so that nobody can read it */
    static Picture of(String text, int width, int height, SplittableRandom random, boolean torn) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(GROUND);
        g.fillRect(0, 0, width, height);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        BarcodeFormat format = FORMATS[random.nextInt(FORMATS.length)];
        BitMatrix code = encode(text, format);
        boolean bars = format == BarcodeFormat.CODE_128;
        double module = bars ? 0.75 * width / (code.getWidth() + 20) : 0.62 * height / (code.getHeight() + 10);
        g.translate(width / 2.0, height / 2.0);
        g.rotate(Math.toRadians(random.nextDouble(-12, 12)));
        g.scale(module, module);
        label(g, code, bars, torn);
        g.dispose();
        return picture(image, random);
    }

    private static void label(Graphics2D g, BitMatrix code, boolean bars, boolean torn) {
        int rows = bars ? code.getWidth() / 3 : code.getHeight();
        int quiet = bars ? 10 : 5;
        double left = -code.getWidth() / 2.0;
        double top = -rows / 2.0;
        g.setColor(PAPER);
        fill(g, left - quiet, top - 5, code.getWidth() + 2.0 * quiet, rows + 10);
        g.setColor(INK);
        for (int y = 0; y < (bars ? 1 : rows); y++) {
            for (int x = 0; x < code.getWidth(); x++) {
                if (code.get(x, y)) fill(g, left + x, top + y, 1, bars ? rows : 1);
            }
        }
        if (torn) {
            g.setColor(PAPER);
            fill(g, left + 0.12 * code.getWidth(), top - 5, 0.3 * code.getWidth(), rows + 10);
        }
    }

    private static void fill(Graphics2D g, double x, double y, double width, double height) {
        g.fill(new java.awt.geom.Rectangle2D.Double(x, y, width, height));
    }

    private static BitMatrix encode(String text, BarcodeFormat format) {
        try {
            return new MultiFormatWriter().encode(text, format, 0, 0, Map.of(EncodeHintType.MARGIN, 0));
        } catch (WriterException e) {
            throw new IllegalArgumentException(e);
        }
    }

    private static Picture picture(BufferedImage image, SplittableRandom random) {
        Picture picture = Picture.black(image.getWidth(), image.getHeight());
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                float noise = (float) random.nextDouble(-0.02, 0.02);
                for (int c = 0; c < 3; c++) {
                    float level = (rgb >> 16 - 8 * c & 0xFF) / 255f + noise;
                    picture.planes()[c][y * image.getWidth() + x] = Math.max(0, Math.min(1, level));
                }
            }
        }
        return picture;
    }
}
