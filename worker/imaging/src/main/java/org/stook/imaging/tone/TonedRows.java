package org.stook.imaging.tone;

import java.util.Arrays;
import org.stook.imaging.frame.Samples;

/** Rows of a frame, toned when asked for. One thread; its buffer is its own. */
public final class TonedRows {
    private final Samples samples;
    private final ToneRows rows;
    private final int channels;
    private int[] codes = {};

    /** @param channels of the result */
    TonedRows(Samples samples, ToneRows rows, int channels) {
        this.samples = samples;
        this.rows = rows;
        this.channels = channels;
    }

    /**
     * Tones a part of row {@code y}.
     *
     * @param from the first column
     * @param lines one a channel of the result; one more, if it is there, takes {@link Samples#luma} of the frame as it was
     *     decoded
     */
    public void read(int y, int from, float[][] lines) {
        boolean three = channels == 3 && rows.isByTableAlone();
        if (three && lines.length == 4 && samples instanceof Samples.Eight eight) {
            rows.lookUpWithLuma(eight.codes(), (y * eight.width() + from) * 3, lines);
            return;
        }
        int needed = lines[0].length * samples.channels();
        if (codes.length != needed) codes = new int[needed];
        samples.row(y, from, codes);
        rows.tone(codes, lines.length == channels ? lines : Arrays.copyOf(lines, channels), 0);
        if (lines.length > channels) samples.luma(y, from, lines[channels]);
    }
}
