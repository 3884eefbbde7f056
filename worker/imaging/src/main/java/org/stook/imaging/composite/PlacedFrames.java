package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.composite.Registered.PlacedFrame;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.OneAhead;
import org.stook.imaging.frame.Samples;
import org.stook.imaging.placing.Placers;

/**
 * Gives the frames one after the other, ready for the blend. The next is decoded meanwhile.
 */
final class PlacedFrames {
    private final Registered registered;
    private final Toning toning;
    private final DecodedFrames decoded;
    private final MapsInPlace maps;
    private final Placers placers = new Placers();

    PlacedFrames(Registered registered, Toning toning, DecodedFrames decoded, MapsInPlace maps) {
        this.registered = registered;
        this.toning = toning;
        this.decoded = decoded;
        this.maps = maps;
    }

    /** What is done with each frame; it is only lent. */
    interface Use {
        void with(int rank, FrameInPlace frame);
    }

    /** The frames' maps alone: no frame is decoded, none can be drawn. */
    void eachUndrawn(Use use) throws IOException {
        for (int i = 0; i < registered.frames().size(); i++) {
            maps.load(registered.frames().get(i), toning.exposureEv(i));
            use.with(i, new FrameInPlace(maps, Optional.empty()));
        }
    }

    void each(Use use) throws IOException {
        List<PlacedFrame> frames = registered.frames();
        try (OneAhead<Samples> samples = new OneAhead<>(frames.size(), maps.threads(), this::decode)) {
            for (int i = 0; i < frames.size(); i++) {
                Samples next = samples.next();
                maps.load(frames.get(i), toning.exposureEv(i));
                use.with(i, new FrameInPlace(maps, Optional.of(drawing(i, next))));
                decoded.done(file(i), next);
            }
        }
        decoded.forget();
    }

    /** A part of one frame alone. */
    Frame part(int rank, Area part, int threads) throws IOException {
        Samples samples = decode(rank);
        Frame drawn = drawing(rank, samples).part(part, threads);
        decoded.done(file(rank), samples);
        return drawn;
    }

    private Drawing drawing(int rank, Samples samples) {
        return new Drawing(
                samples, toning.of(rank), registered.frames().get(rank).placement(), registered.area(), placers);
    }

    private Samples decode(int rank) throws IOException {
        return decoded.read(file(rank));
    }

    private Path file(int rank) {
        return registered.frames().get(rank).frame().file();
    }
}
