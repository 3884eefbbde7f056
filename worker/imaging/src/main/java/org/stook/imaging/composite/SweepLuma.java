package org.stook.imaging.composite;

import java.io.IOException;
import java.util.List;
import org.stook.imaging.frame.LumaSource;
import org.stook.imaging.frame.Plane;

/** The sweep's luminance for registration, decoded when asked for. */
final class SweepLuma implements LumaSource {
    private final List<Sighting> sweep;
    private final DecodedFrames frames;
    private final Progress progress;

    SweepLuma(List<Sighting> sweep, DecodedFrames frames, Progress progress) {
        this.sweep = sweep;
        this.frames = frames;
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
        return Luma.of(frames.read(sweep.get(frame).file()), reduction);
    }
}
