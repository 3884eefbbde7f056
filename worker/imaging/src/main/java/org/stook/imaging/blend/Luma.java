package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;

/** The grey that guides: (R + 2 G + B) / 4 of encoded values. */
final class Luma {
    private Luma() {}

    static float at(Frame frame, int i) {
        float[] first = frame.plane(0).samples();
        if (frame.channels() == 1) return first[i];
        return 0.25f * (first[i] + frame.plane(2).samples()[i])
                + 0.5f * frame.plane(1).samples()[i];
    }
}
