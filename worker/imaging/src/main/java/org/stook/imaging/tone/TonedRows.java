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
     * @param count columns; lines may be longer
     * @param lines one a channel of the result; one more, if it is there, takes {@link Samples#luma} of the frame as it was
     *     decoded
     */
    public void read(int y, int from, int count, float[][] lines) {
        boolean quick = lines.length == 4 && samples.channels() == 3 && rows.isByTableAlone();
        int start = (y * samples.width() + from) * 3;
        if (quick && samples instanceof Samples.EightLumaChroma codes) rows.lookUpWithLuma(codes, start, count, lines);
        else if (quick && samples instanceof Samples.Eight codes) rows.lookUpWithLuma(codes, start, count, lines);
        else readAny(y, from, count, lines);
    }

    private void readAny(int y, int from, int count, float[][] lines) {
        int needed = count * samples.channels();
        if (codes.length != needed) codes = new int[needed];
        samples.row(y, from, codes);
        rows.tone(codes, lines.length == channels ? lines : Arrays.copyOf(lines, channels), 0);
        if (lines.length > channels) samples.luma(y, from, count, lines[channels]);
    }
}
