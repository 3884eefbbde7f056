package org.stook.imaging.composite;

import org.stook.imaging.blend.BlendFrame;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.score.SharpnessLedger;

/** A frame whose sharpness is measured wherever it is drawn. */
record WatchedFrame(BlendFrame frame, SharpnessLedger ledger) implements BlendFrame {
    @Override
    public void detail(Plane half) {
        frame.detail(half);
    }

    @Override
    public void guide(Plane quarter) {
        frame.guide(quarter);
    }

    @Override
    public void draw(Area area, float[][][] target) {
        frame.draw(area, target);
        ledger.add(area, target);
    }
}
