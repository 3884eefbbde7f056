package org.stook.imaging.tone;

import org.stook.imaging.frame.Frame;

/**
 * Makes a frame smaller by area averages in linear light: half black and half white become the grey that is half as
 * light as white (sRGB code 188), not the one whose code is half as large.
 */
public final class Shrink {
    private static final int STEPS = 1 << 16;

    private Shrink() {}

    /**
     * The frame with its longer side at most {@code maxEdge} pixels, aspect ratio kept; the frame itself if it is small
     * enough already.
     *
     * @param space what the frame's values are encoded in
     */
    public static Frame toMaxEdge(Frame frame, int maxEdge, ColourSpace space) {
        if (maxEdge < 1) throw new IllegalArgumentException("the longer side must be 1 or more, got " + maxEdge);
        int longer = Math.max(frame.width(), frame.height());
        if (longer <= maxEdge) return frame;
        int width = Math.max(1, (int) Math.round((double) frame.width() * maxEdge / longer));
        int height = Math.max(1, (int) Math.round((double) frame.height() * maxEdge / longer));
        Frame out = Frame.blank(width, height, frame.channels());
        for (int c = 0; c < frame.channels(); c++) {
            TransferCurve curve = space.curve(c);
            new ShrinkPlane(frame.plane(c), out.plane(c), lightTable(curve), new EncodingTable(curve)).run();
        }
        return out;
    }

    private static float[] lightTable(TransferCurve curve) {
        float[] table = new float[STEPS];
        for (int i = 0; i < STEPS; i++) table[i] = (float) curve.toLight(i / (double) (STEPS - 1));
        return table;
    }
}
