package org.stook.imaging.composite;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Samples;
import org.stook.imaging.placing.MapPlacer;
import org.stook.imaging.placing.Placer;
import org.stook.imaging.placing.Placers;
import org.stook.imaging.tone.Tone;
import org.stook.imaging.tone.TonedRows;

/**
 * Draws parts of one decoded frame, toned as they are drawn, so that no whole frame is ever toned.
 *
 * @param area the common area, in which parts are counted
 * @param placers shared by all frames
 */
record Drawing(Samples samples, Tone tone, Placement placement, Area area, Placers placers) {
    /** Rows that one thread draws in one go. */
    private static final int BAND = 64;

    /** As {@link org.stook.imaging.blend.BlendFrame#draw}: luminance only guides, and so is drawn bilinearly. */
    void draw(Area part, float[][][] target) {
        Placer.Channels channels = new Placer.Channels(tone.outputChannels(), target.length);
        placers.with(placer ->
                placer.draw(inFrame(part), tone.rowsOf(samples)::read, samples.width(), placement, channels, target));
    }

    private Area inFrame(Area part) {
        return new Area(area.x() + part.x(), area.y() + part.y(), part.width(), part.height());
    }

    /** A part of the frame alone. */
    Frame part(Area part, int threads) {
        Frame frame = tone.blank(part.width(), part.height());
        Parallel.forEach((part.height() + BAND - 1) / BAND, threads, band -> {
            int top = band * BAND;
            Area rows = new Area(part.x(), part.y() + top, part.width(), Math.min(BAND, part.height() - top));
            placers.with(placer ->
                    placer.draw(inFrame(rows), tone.rowsOf(samples)::read, samples.width(), placement, frame, top));
        });
        return frame;
    }

    /**
     * The whole area, small: means over {@code n x n} pixels of squares, which is near enough to light for looking at. What
     * does not fill a cell at the end is left out.
     */
    Frame reduced(int n, int threads) {
        Frame small = Frame.blank(samples.width() / n, samples.height() / n, tone.outputChannels());
        Parallel.forEach((small.height() + BAND - 1) / BAND, threads, band -> {
            TonedRows rows = tone.rowsOf(samples);
            float[] line = new float[small.channels() * samples.width()];
            for (int y = band * BAND; y < Math.min(small.height(), (band + 1) * BAND); y++) {
                reduceRow(rows, line, n, y, small);
            }
        });
        Frame placed = Frame.blank(area.width() / n, area.height() / n, small.channels());
        Parallel.forEach(placed.height(), threads, y -> {
            float[] line = new float[placed.width()];
            for (int c = 0; c < small.channels(); c++) {
                // Both are means over n x n pixels, so their centres are off by the same.
                new MapPlacer(area, n).row(small.plane(c), n, 0, placement, y, line);
                System.arraycopy(line, 0, placed.plane(c).samples(), y * line.length, line.length);
            }
        });
        return placed;
    }

    private static void reduceRow(TonedRows rows, float[] line, int n, int y, Frame small) {
        float[][] sums = new float[small.channels()][small.width()];
        int width = line.length / sums.length;
        for (int row = y * n; row < (y + 1) * n; row++) {
            rows.read(row, 0, width, sums.length, line);
            for (int c = 0; c < sums.length; c++) addSquares(line, c * width, n, sums[c]);
        }
        for (int c = 0; c < sums.length; c++) {
            Plane out = small.plane(c);
            for (int x = 0; x < small.width(); x++) out.set(x, y, (float) Math.sqrt(sums[c][x] / (n * n)));
        }
    }

    private static void addSquares(float[] line, int from, int n, float[] sums) {
        for (int x = 0, at = from; x < sums.length; x++) {
            for (int i = 0; i < n; i++, at++) {
                float value = Math.max(0, line[at]);
                sums[x] += value * value;
            }
        }
    }
}
