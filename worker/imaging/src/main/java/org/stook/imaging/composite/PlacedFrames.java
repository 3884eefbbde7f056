package org.stook.imaging.composite;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.composite.Registered.PlacedFrame;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Samples;
import org.stook.imaging.placing.Placer;
import org.stook.imaging.placing.SourceRows;
import org.stook.imaging.tone.Tone;
import org.stook.imaging.tone.TonedRows;

/** Gives the frames one after the other, toned and drawn into the common area; the next is decoded meanwhile. */
final class PlacedFrames implements AutoCloseable {
    /** Rows drawn in one go; the more, the fewer rows of the frame are toned twice. */
    private static final int BAND = 128;

    private final Registered registered;
    private final Toning toning;
    private final DecodedFrames decoded;
    private final int threads;
    private final ExecutorService ahead = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "decode-ahead");
        thread.setDaemon(true);
        return thread;
    });
    private @Nullable Frame placed;

    PlacedFrames(Registered registered, Toning toning, DecodedFrames decoded, int threads) {
        this.registered = registered;
        this.toning = toning;
        this.decoded = decoded;
        this.threads = threads;
    }

    /** What is done with each frame; it is only lent. */
    interface Use {
        void with(int rank, Frame placed);
    }

    /** @param colour whether all channels are wanted, or luminance alone */
    void each(boolean colour, Use use) throws IOException {
        List<PlacedFrame> frames = registered.frames();
        Future<Samples> next = decode(0);
        for (int i = 0; i < frames.size(); i++) {
            Samples samples = await(next);
            if (i + 1 < frames.size()) next = decode(i + 1);
            use.with(i, place(i, samples, colour));
        }
    }

    /** A part of one frame alone, in colour. @param area in reference pixels, inside the common area */
    Frame part(int rank, Area area) throws IOException {
        Tone tone = toning.of(rank);
        Frame target = tone.blank(area.width(), area.height());
        draw(rank, await(decode(rank)), area, target);
        return target;
    }

    private Future<Samples> decode(int rank) {
        Callable<Samples> task =
                () -> decoded.read(registered.frames().get(rank).frame().file());
        return ahead.submit(task);
    }

    private Frame place(int rank, Samples samples, boolean colour) {
        Tone tone = toning.of(rank);
        Frame target = target(colour ? tone.outputChannels() : 1);
        draw(rank, samples, registered.area(), target);
        return target;
    }

    private void draw(int rank, Samples samples, Area area, Frame target) {
        Tone tone = toning.of(rank);
        Placer placer = new Placer(area);
        PlacedFrame frame = registered.frames().get(rank);
        Parallel.forEach((target.height() + BAND - 1) / BAND, threads, band -> {
            TonedRows toned = tone.rowsOf(samples);
            SourceRows rows =
                    target.channels() == tone.outputChannels() ? toned::colours : (y, lines) -> toned.luma(y, lines[0]);
            int to = Math.min(target.height(), (band + 1) * BAND);
            placer.draw(rows, samples.width(), frame.placement(), band * BAND, to, target);
        });
    }

    private Frame target(int channels) {
        Frame known = placed;
        if (known == null || known.channels() != channels) {
            known = Frame.blank(registered.area().width(), registered.area().height(), channels);
            placed = known;
        }
        return known;
    }

    private static Samples await(Future<Samples> decoding) throws IOException {
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
