package org.stook.imaging.composite.view;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.stook.imaging.codec.JpegWriter;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.tone.ColourSpace;
import org.stook.imaging.tone.Shrink;
import org.stook.imaging.tone.Tone;
import org.stook.imaging.tone.ToneSettings;

/**
 * Small copies of the placed frames, each as the composite would show it: same area, same tones. So whatever lies at a place of
 * the composite lies at the same place in each of them.
 */
public final class Proxies {
    /** Pixels along the longer side at most. */
    private static final int LONG_SIDE = 2000;

    private static final int THUMBNAIL = 240;
    private static final double QUALITY = 0.85;

    /**
     * How the copies look.
     *
     * @param space of the placed frames
     * @param finish what the composite gets on top
     */
    public record Look(ColourSpace space, ToneSettings finish) {}

    private final Path folder;
    private final Look look;
    private final int threads;

    /** @param folder is made when the first frame comes; holds {@code frames/} and {@code thumbnails/}, named by rank */
    public Proxies(Path folder, Look look, int threads) {
        this.folder = folder;
        this.look = look;
        this.threads = threads;
    }

    /** The whole factor by which frames of that size are reduced; what does not fill a cell at the end is left out. */
    public static int reduction(int width, int height) {
        return Math.min(Math.min(width, height), (Math.max(width, height) + LONG_SIDE - 1) / LONG_SIDE);
    }

    static String file(int rank) {
        return String.format(Locale.ROOT, "frames/%03d.jpg", rank);
    }

    static String thumbnail(int rank) {
        return String.format(Locale.ROOT, "thumbnails/%03d.jpg", rank);
    }

    /** @param reduced the placed frame, toned, reduced by {@link #reduction}, encoded */
    public void add(int rank, Frame reduced) {
        Frame small = reduced;
        ColourSpace space = look.space();
        if (!look.finish().isNone()) {
            Tone finish = Tone.prepare(look.finish(), space, space, 1);
            Frame finished = finish.blank(small.width(), small.height());
            finish.applyRows(small, 0, small.height(), finished);
            small = finished;
            space = finish.outputSpace();
        }
        write(folder.resolve(file(rank)), small, space);
        write(folder.resolve(thumbnail(rank)), Shrink.toMaxEdge(small, THUMBNAIL, space), space);
    }

    private void write(Path file, Frame frame, ColourSpace space) {
        Screen screen = new Screen(space, threads);
        try {
            Files.createDirectories(file.getParent());
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
                JpegWriter.write(screen.codes(frame), frame.width(), frame.height(), screen.channels(), QUALITY, out);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
