package org.stook.imaging.slate;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.MultiFormatWriter;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Draws pictures of printed labels: a grey, grainy ground, a light label at any turn, on it a symbol and a line of print beneath,
 * as sharp or soft as wanted. The symbols themselves come from the barcode library's writers.
 *
 * @param format symbology
 * @param text what the symbol says
 * @param module pixels a module
 * @param degrees turn
 * @param softness standard deviation of the blur, pixels
 * @param print whether a line of print runs beneath the symbol
 */
record LabelScene(BarcodeFormat format, String text, int module, double degrees, double softness, boolean print) {
    LabelScene(BarcodeFormat format, String text, int module, double degrees, double softness) {
        this(format, text, module, degrees, softness, true);
    }

    private static final int PAPER = 228;
    private static final int INK = 38;
    private static final int GROUND = 96;
    private static final int MARGIN_MODULES = 5;
    private static final int BAR_MODULES = 30;

    GreyPicture draw(int width, int height) {
        byte[] levels = ground(width, height);
        BitMatrix symbol = symbol();
        boolean bars = format == BarcodeFormat.CODE_128;
        int rows = bars ? BAR_MODULES : symbol.getHeight();
        int quietX = bars ? 10 : MARGIN_MODULES;
        double labelWidth = (symbol.getWidth() + 2.0 * quietX) * module;
        double labelHeight = (rows + (print ? 3.0 : 2.0) * MARGIN_MODULES) * module;
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        double cx = 0.55 * width;
        double cy = 0.47 * height;
        int reach = (int) (Math.hypot(labelWidth, labelHeight) / 2 + 4 * softness + 4);
        int size = 2 * reach + 1;
        float[] patch = new float[size * size];
        for (int y = 0; y < size; y++) {
            for (int x = 0; x < size; x++) {
                int px = (int) cx - reach + x;
                int py = (int) cy - reach + y;
                float sum = 0;
                for (int s = 0; s < 4; s++) {
                    double dx = px - cx + (s % 2) * 0.5 - 0.25;
                    double dy = py - cy + (s / 2) * 0.5 - 0.25;
                    double u = dx * cos + dy * sin + labelWidth / 2;
                    double v = dy * cos - dx * sin + labelHeight / 2;
                    sum += level(u, v, labelWidth, labelHeight, symbol, rows, quietX, levels[py * width + px] & 0xFF);
                }
                patch[y * size + x] = sum / 4;
            }
        }
        put(softness > 0 ? blurred(patch, size) : patch, size, (int) cx - reach, (int) cy - reach, levels, width);
        return new GreyPicture(width, height, levels);
    }

    private float level(double u, double v, double w, double h, BitMatrix symbol, int rows, int quietX, int ground) {
        if (u < 0 || v < 0 || u >= w || v >= h) return ground;
        int col = (int) Math.floor(u / module) - quietX;
        int row = (int) Math.floor(v / module) - MARGIN_MODULES;
        boolean inside = col >= 0 && col < symbol.getWidth() && row >= 0 && row < rows;
        if (inside) return symbol.get(col, format == BarcodeFormat.CODE_128 ? 0 : row) ? INK : PAPER;
        // A line of print: strokes one module wide, some missing.
        int line = row - rows - MARGIN_MODULES / 2;
        boolean stroke = print && line >= 0 && line < 3 && col >= 2 && col < symbol.getWidth() - 2;
        return stroke && (col * 2654435761L >>> 7 & 3) < 2 ? INK + 20 : PAPER;
    }

    private BitMatrix symbol() {
        try {
            BitMatrix drawn = new MultiFormatWriter()
                    .encode(
                            text,
                            format,
                            0,
                            0,
                            Map.of(EncodeHintType.MARGIN, 0, EncodeHintType.DATA_MATRIX_COMPACT, false));
            return drawn;
        } catch (WriterException e) {
            throw new IllegalArgumentException(e);
        }
    }

    static byte[] ground(int width, int height) {
        SplittableRandom random = new SplittableRandom(11);
        byte[] grain = new byte[1 << 16];
        for (int i = 0; i < grain.length; i++) grain[i] = (byte) (GROUND + random.nextInt(-14, 15));
        byte[] levels = new byte[width * height];
        for (int y = 0; y < height; y++) {
            int at = random.nextInt(grain.length - 1);
            for (int x = 0; x < width; ) {
                int n = Math.min(width - x, grain.length - at);
                System.arraycopy(grain, at, levels, y * width + x, n);
                x += n;
                at = 0;
            }
        }
        return levels;
    }

    private float[] blurred(float[] in, int size) {
        int r = (int) Math.ceil(3 * softness);
        float[] kernel = new float[2 * r + 1];
        float sum = 0;
        for (int i = -r; i <= r; i++) sum += kernel[i + r] = (float) Math.exp(-i * i / (2 * softness * softness));
        float[] once = new float[in.length];
        float[] twice = new float[in.length];
        for (int pass = 0; pass < 2; pass++) {
            float[] from = pass == 0 ? in : once;
            float[] to = pass == 0 ? once : twice;
            int step = pass == 0 ? 1 : size;
            for (int y = 0; y < size; y++) {
                for (int x = 0; x < size; x++) {
                    int at = pass == 0 ? x : y;
                    float acc = 0;
                    for (int i = -r; i <= r; i++) {
                        int k = Math.max(0, Math.min(size - 1, at + i)) - at;
                        acc += kernel[i + r] * from[y * size + x + k * step];
                    }
                    to[y * size + x] = acc / sum;
                }
            }
        }
        return twice;
    }

    private static void put(float[] patch, int size, int left, int top, byte[] levels, int width) {
        for (int y = 0; y < size; y++) {
            for (int x = 0; x < size; x++)
                levels[(top + y) * width + left + x] = (byte) Math.round(patch[y * size + x]);
        }
    }
}
