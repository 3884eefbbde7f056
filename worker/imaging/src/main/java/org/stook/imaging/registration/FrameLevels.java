package org.stook.imaging.registration;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.frame.LumaSource;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Reduction;

/** One frame at all sizes that registration looks at, the finest first. */
record FrameLevels(int frame, List<Level> levels) {
    /** The finest level is the largest one whose long side does not exceed this. */
    private static final int FINEST_LONG_SIDE = 3200;

    private static final int COARSEST_LONG_SIDE = 300;

    static FrameLevels read(LumaSource source, int frame) throws IOException {
        int reduction = finestReduction(source);
        Plane plane = source.read(frame, reduction);
        List<Level> levels = new ArrayList<>();
        levels.add(new Level(plane, reduction));
        while (Math.max(plane.width(), plane.height()) > COARSEST_LONG_SIDE) {
            plane = Reduction.half(plane);
            reduction *= 2;
            levels.add(new Level(plane, reduction));
        }
        return new FrameLevels(frame, List.copyOf(levels));
    }

    static int finestReduction(LumaSource source) {
        int reduction = 1;
        while (reduction < 8 && Math.max(source.width(), source.height()) / reduction > FINEST_LONG_SIDE)
            reduction *= 2;
        return reduction;
    }
}
