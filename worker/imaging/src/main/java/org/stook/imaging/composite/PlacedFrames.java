package org.stook.imaging.composite;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import org.stook.imaging.composite.Registered.PlacedFrame;
import org.stook.imaging.frame.Samples;

/**
 * Gives the frames one after the other, ready for the blend. The next is decoded meanwhile, unless one thread is all there
 * may be.
 */
final class PlacedFrames implements AutoCloseable {
    private final Registered registered;
    private final Toning toning;
    private final DecodedFrames decoded;
    private final MapsInPlace maps;
    private final ExecutorService ahead = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "decode-ahead");
        thread.setDaemon(true);
        return thread;
    });

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
        FutureTask<Samples> next = decode(0);
        for (int i = 0; i < frames.size(); i++) {
            Samples samples = await(next);
            if (i + 1 < frames.size()) next = decode(i + 1);
            maps.load(frames.get(i), toning.exposureEv(i));
            use.with(i, new FrameInPlace(maps, Optional.of(drawing(i, samples))));
        }
    }

    /** One frame alone, to be drawn in parts. */
    Drawing drawing(int rank) throws IOException {
        return drawing(rank, await(decode(rank)));
    }

    private Drawing drawing(int rank, Samples samples) {
        return new Drawing(
                samples, toning.of(rank), registered.frames().get(rank).placement(), registered.area());
    }

    private FutureTask<Samples> decode(int rank) {
        FutureTask<Samples> task = new FutureTask<>(
                () -> decoded.read(registered.frames().get(rank).frame().file()));
        if (maps.threads() > 1) ahead.execute(task);
        return task;
    }

    private static Samples await(FutureTask<Samples> decoding) throws IOException {
        // Does nothing if it was begun already.
        decoding.run();
        try {
            return decoding.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof IOException io) throw io;
            throw new IllegalStateException("decoding a frame failed", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while a frame was decoded", e);
        }
    }

    @Override
    public void close() {
        ahead.shutdownNow();
    }
}
