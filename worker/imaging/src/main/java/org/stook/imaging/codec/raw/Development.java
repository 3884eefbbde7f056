package org.stook.imaging.codec.raw;

import java.util.Arrays;
import org.stook.imaging.frame.Samples;

/**
 * Sensor counts to a picture, always in the same way: white balance as shot, clipped where the first colour is full; the two
 * colours that a pixel lacks from its neighbours; camera colours to linear sRGB by the camera's matrix, clipped; encoded by sRGB (IEC
 * 61966-2-1) in 16 bit. No brightening, no sharpening, no noise reduction, nothing that depends on the other pixels of the picture.
 *
 * <p>The missing colours: green by the smoother of the two directions, corrected by the second difference of the pixel's own colour;
 * red and blue as differences from green, averaged over the neighbours that have them (J. Hamilton, J. Adams: "Adaptive color
 * plane interpolation in single sensor color electronic camera", US 5,629,734, 1997, expired). Beyond its edges the picture is
 * mirrored.
 */
final class Development {
    private static final int CODES = 1 << 16;
    private static final char[] ENCODED = new char[CODES];
    /** Rows that are worked on at a time. */
    private static final int BAND = 32;
    /** Rows of green needed beyond a band, and of counts beyond those of green. */
    private static final int MARGIN = 1;

    static {
        for (int i = 0; i < CODES; i++) {
            double light = i / (CODES - 1.0);
            double code = light <= 0.0031308 ? 12.92 * light : 1.055 * StrictMath.pow(light, 1 / 2.4) - 0.055;
            ENCODED[i] = (char) Math.round(code * (CODES - 1));
        }
    }

    private final Mosaic mosaic;
    private final int width;
    private final int height;
    /** Light by colour and count, balanced and clipped. */
    private final float[][] levels;

    private final float[] matrix;

    private Development(Mosaic mosaic) {
        this.mosaic = mosaic;
        width = mosaic.width();
        height = mosaic.height();
        matrix = mosaic.light().matrix();
        levels = new float[3][CODES];
        for (int c = 0; c < 3; c++) {
            float factor = mosaic.light().balance()[c] / mosaic.light().saturated();
            for (int i = 0; i < CODES; i++) levels[c][i] = Math.min(1, i * factor);
        }
    }

    static Samples.Sixteen of(Mosaic mosaic) {
        short[] codes = new short[Math.multiplyExact(3, mosaic.width() * mosaic.height())];
        Development development = new Development(mosaic);
        for (int top = 0; top < mosaic.height(); top += BAND) development.band(top, codes);
        return new Samples.Sixteen(mosaic.width(), mosaic.height(), 3, codes);
    }

    private void band(int top, short[] codes) {
        int rows = Math.min(BAND, height - top);
        // Rows -3 to rows + 2 of light, -1 to rows of green.
        float[][] light = new float[rows + 6][];
        for (int i = 0; i < light.length; i++) light[i] = light(mirrored(top + i - 3, height));
        float[][] green = new float[rows + 2 * MARGIN][];
        for (int i = 0; i < green.length; i++) {
            green[i] = green(mirrored(top + i - MARGIN, height), Arrays.copyOfRange(light, i, i + 5));
        }
        float[] rgb = new float[3 * width];
        for (int i = 0; i < rows; i++) {
            colours(top + i, Arrays.copyOfRange(light, i + 2, i + 5), Arrays.copyOfRange(green, i, i + 3), rgb);
            encode(rgb, codes, 3 * width * (top + i));
        }
    }

    /** Even and odd places stay what they are, and so do the filters. */
    private static int mirrored(int at, int size) {
        int inside = Math.abs(at);
        return inside < size ? inside : Math.max(0, 2 * (size - 1) - inside);
    }

    private float[] light(int y) {
        float[] row = new float[width];
        for (int x = 0; x < width; x++) row[x] = levels[mosaic.filter(x, y)][mosaic.count(x, y)];
        return row;
    }

    /** @param rows of light, two above to two below */
    private float[] green(int y, float[][] rows) {
        float[] own = rows[2];
        float[] green = own.clone();
        for (int x = mosaic.filter(0, y) == 1 ? 1 : 0; x < width; x += 2) {
            int l = mirrored(x - 1, width);
            int r = mirrored(x + 1, width);
            float here = 2 * own[x];
            float bendAcross = here - own[mirrored(x - 2, width)] - own[mirrored(x + 2, width)];
            float bendDown = here - rows[0][x] - rows[4][x];
            float across = Math.abs(own[l] - own[r]) + Math.abs(bendAcross);
            float down = Math.abs(rows[1][x] - rows[3][x]) + Math.abs(bendDown);
            float byRow = (own[l] + own[r]) / 2 + bendAcross / 4;
            float byColumn = (rows[1][x] + rows[3][x]) / 2 + bendDown / 4;
            float value = across < down ? byRow : byColumn;
            green[x] = across == down ? (byRow + byColumn) / 2 : value;
        }
        return green;
    }

    /** @param light the row and its neighbours; @param green of the same rows */
    private void colours(int y, float[][] light, float[][] green, float[] rgb) {
        for (int x = 0; x < width; x++) {
            int l = mirrored(x - 1, width);
            int r = mirrored(x + 1, width);
            int own = mosaic.filter(x, y);
            float g = green[1][x];
            rgb[3 * x + 1] = g;
            if (own == 1) {
                float across = (light[1][l] - green[1][l] + light[1][r] - green[1][r]) / 2;
                float down = (light[0][x] - green[0][x] + light[2][x] - green[2][x]) / 2;
                int beside = mosaic.filter(l, y);
                rgb[3 * x + beside] = g + across;
                rgb[3 * x + 2 - beside] = g + down;
            } else {
                float corners = light[0][l]
                        - green[0][l]
                        + light[0][r]
                        - green[0][r]
                        + light[2][l]
                        - green[2][l]
                        + light[2][r]
                        - green[2][r];
                rgb[3 * x + own] = light[1][x];
                rgb[3 * x + 2 - own] = g + corners / 4;
            }
        }
    }

    private void encode(float[] rgb, short[] codes, int from) {
        for (int x = 0, i = from; x < rgb.length; x += 3) {
            for (int c = 0; c < 9; c += 3) {
                float linear = matrix[c] * rgb[x] + matrix[c + 1] * rgb[x + 1] + matrix[c + 2] * rgb[x + 2];
                float clipped = Math.max(0, Math.min(1, linear));
                codes[i++] = (short) ENCODED[(int) (clipped * (CODES - 1) + 0.5f)];
            }
        }
    }
}
