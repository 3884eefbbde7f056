package org.stook.app.review;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** What is known of one place of a composite. */
@Component
public class Points {
    /**
     * A touched place.
     *
     * @param x pixels of the composite
     * @param y likewise
     * @param file name of the frame that the place mostly came from
     * @param rank of that frame
     * @param frames how many were blended
     * @param sentences what else is to be said
     * @param shown that frame with its neighbours, in sweep order
     */
    public record Point(
            long run, int x, int y, String file, int rank, int frames, List<String> sentences, List<Shown> shown) {}

    /** A frame beside others. @param from whether the place came from it */
    public record Shown(int rank, String file, boolean from) {}

    private final Records records;
    private final Layers layers;

    Points(Records records, Layers layers) {
        this.records = records;
        this.layers = layers;
    }

    /**
     * @param middle rank of the frame to show in the middle; none: the one that the place came from
     * @return empty if there is no such place or no map of it
     */
    public Optional<Point> at(long run, double x, double y, Optional<Integer> middle) throws IOException {
        Optional<RunRecord> found = records.find(run);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        RunRecord record = found.get();
        double inX = Math.max(0, Math.min(record.area().width() - 1, x));
        double inY = Math.max(0, Math.min(record.area().height() - 1, y));
        List<RunRecord.Frame> frames = record.blended();
        return layers.at(run, record.area().width(), inX, inY).map(values -> {
            int rank = Math.min(frames.size() - 1, values.rank());
            int around = Math.max(0, Math.min(frames.size() - 1, middle.orElse(rank)));
            return new Point(
                    run,
                    (int) inX,
                    (int) inY,
                    frames.get(rank).file(),
                    rank,
                    frames.size(),
                    sentences(values, frames.size()),
                    shown(frames, around, rank));
        });
    }

    private static List<Shown> shown(List<RunRecord.Frame> frames, int around, int rank) {
        int first = Math.max(0, Math.min(frames.size() - 3, around - 1));
        List<Shown> shown = new ArrayList<>();
        for (int r = first; r < Math.min(frames.size(), first + 3); r++) {
            shown.add(new Shown(r, frames.get(r).file(), r == rank));
        }
        return shown;
    }

    private static List<String> sentences(Layers.Values values, int frames) {
        List<String> sentences = new ArrayList<>();
        sentences.add(
                Double.isNaN(values.depth())
                        ? "No frame shows enough detail here to tell its depth."
                        : String.format(
                                Locale.ROOT, "Sharpest at %.1f of %d in the sweep.", values.depth() + 1, frames));
        if ((values.doubt() & Layers.OVERRIDDEN) != 0) sentences.add("This region was taken from the frame by hand.");
        if ((values.doubt() & Layers.JUMP) != 0) sentences.add("Parts of far apart depths meet here.");
        if ((values.doubt() & Layers.SOFT) != 0) {
            sentences.add("The composite is less sharp here than the sharpest frame.");
        }
        return sentences;
    }
}
