package org.stook.imaging.tone;

import org.stook.imaging.frame.Samples;

/** Rows of a frame, toned when asked for. One thread; its buffer is its own. */
public final class TonedRows {
    private final Samples samples;
    private final ToneRows rows;
    private final int[] codes;
    private final float[][] colours;

    TonedRows(Samples samples, ToneRows rows) {
        this.samples = samples;
        this.rows = rows;
        this.codes = new int[samples.width() * samples.channels()];
        this.colours = new float[3][samples.width()];
    }

    /**
     * Tones row {@code y}.
     *
     * @param lines one a channel of the result, at least as long as the frame is wide
     */
    public void colours(int y, float[][] lines) {
        if (samples instanceof Samples.Eight eight && rows.isByTableAlone() && lines.length == 3) {
            rows.lookUp(eight.codes(), y * codes.length, samples.width(), lines);
            return;
        }
        samples.row(y, codes);
        rows.tone(codes, lines, 0);
    }

    /** Luminance of row {@code y} of a result in colour, (R + 2 G + B) / 4, where colour would be worked out for nothing. */
    public void luma(int y, float[] line) {
        colours(y, colours);
        float[] red = colours[0];
        float[] green = colours[1];
        float[] blue = colours[2];
        for (int x = 0; x < line.length; x++) line[x] = 0.25f * (red[x] + blue[x]) + 0.5f * green[x];
    }
}
