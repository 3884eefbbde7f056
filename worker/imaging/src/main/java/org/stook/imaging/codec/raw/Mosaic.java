package org.stook.imaging.codec.raw;

/**
 * What a sensor counted, one colour a pixel, black taken off.
 *
 * @param width pixels
 * @param height pixels
 * @param counts unsigned, row by row
 * @param filters colours of the upper left 2 x 2 pixels, row by row, which repeat: 0 red, 1 green, 2 blue
 * @param light what the counts mean
 */
@SuppressWarnings("ArrayRecordComponent") // the array is the point: no copy of a 60 MP picture
record Mosaic(int width, int height, short[] counts, int[] filters, Light light) {
    /**
     * @param saturated counts at which the sensor is full, above 0
     * @param balance factors of red, green and blue that make a neutral surface grey, the smallest of them 1
     * @param matrix balanced camera colours to linear sRGB, 3 x 3, row by row
     */
    @SuppressWarnings("ArrayRecordComponent") // as above
    record Light(float saturated, float[] balance, float[] matrix) {}

    int count(int x, int y) {
        return counts[y * width + x] & 0xFFFF;
    }

    int filter(int x, int y) {
        return filters[(y & 1) * 2 + (x & 1)];
    }
}
