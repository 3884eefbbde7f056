package org.stook.imaging.tone;

import java.util.Arrays;
import org.stook.imaging.frame.Samples;

/** Rows of a frame, toned when asked for. One thread; its buffer is its own. */
public final class TonedRows {
    private final Samples samples;
    private final ToneRows rows;
    private final int channels;
    private int[] codes = {};
    private float[][] apart = {};

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
     * @param count columns
     * @param wanted channels of the result, or one more, which is {@link Samples#luma} of the frame as it was decoded
     * @param line takes the channels one behind the other, {@code count} samples each; it may be longer
     */
    public void read(int y, int from, int count, int wanted, float[] line) {
        boolean quick = wanted == 4 && samples.channels() == 3 && rows.isByTableAlone();
        int start = (y * samples.width() + from) * 3;
        if (quick && samples instanceof Samples.EightLumaChroma codes) rows.lookUpWithLuma(codes, start, count, line);
        else if (quick && samples instanceof Samples.Eight codes) rows.lookUpWithLuma(codes, start, count, line);
        else readAny(y, from, count, wanted, line);
    }

    private void readAny(int y, int from, int count, int wanted, float[] line) {
        makeRoom(count);
        samples.row(y, from, codes);
        rows.tone(codes, Arrays.copyOf(apart, channels), 0);
        if (wanted > channels) samples.luma(y, from, count, apart[channels]);
        for (int c = 0; c < wanted; c++) System.arraycopy(apart[c], 0, line, c * count, count);
    }

    private void makeRoom(int count) {
        if (codes.length == count * samples.channels()) return;
        codes = new int[count * samples.channels()];
        apart = new float[channels + 1][count];
    }
}
