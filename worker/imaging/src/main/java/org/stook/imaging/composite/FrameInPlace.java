package org.stook.imaging.composite;

import java.util.Optional;
import org.stook.imaging.blend.BlendFrame;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;

/**
 * A registered frame for the blend.
 *
 * @param drawing absent in passes that do not draw, whose frames are not decoded
 */
record FrameInPlace(MapsInPlace maps, Optional<Drawing> drawing) implements BlendFrame {
    @Override
    public void detail(Plane half) {
        maps.detail(half);
    }

    @Override
    public void guide(Plane quarter) {
        maps.guide(quarter);
    }

    @Override
    public void draw(Area area, float[][][] target) {
        drawing.orElseThrow().draw(area, target);
    }
}
