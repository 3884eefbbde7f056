package org.stook.imaging.composite;

import java.io.IOException;
import java.util.List;
import org.stook.imaging.frame.LumaSource;
import org.stook.imaging.frame.Plane;

/** The sweep's luminance for registration. */
final class SweepLuma implements LumaSource {
    private final List<Sighting> sweep;
    private final FrameMaps maps;
    private final Progress progress;

    SweepLuma(List<Sighting> sweep, FrameMaps maps, Progress progress) {
        this.sweep = sweep;
        this.maps = maps;
        this.progress = progress;
    }

    @Override
    public int frames() {
        return sweep.size();
    }

    @Override
    public int width() {
        return sweep.get(0).header().width();
    }

    @Override
    public int height() {
        return sweep.get(0).header().height();
    }

    @Override
    public Plane read(int frame, int reduction) throws IOException {
        progress.at(Composition.REGISTER, (double) frame / frames());
        int small = FrameMaps.reduction(width(), height());
        if (reduction % small != 0) {
            throw new IllegalArgumentException("frames are kept reduced by " + small + ", asked for " + reduction);
        }
        return ReducedLuma.mean(maps.luma(sweep.get(frame).file()).read(), reduction / small);
    }
}
