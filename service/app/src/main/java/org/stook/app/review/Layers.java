package org.stook.app.review;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.springframework.stereotype.Component;

/** The published maps as pictures to lay over a composite, and their values at a point. */
@Component
public class Layers {
    private static final int CLEAR = 0;

    /** What may be laid over a composite. */
    public enum Kind {
        SOURCE,
        DEPTH,
        DOUBT;

        static Optional<Kind> of(String word) {
            for (Kind kind : values()) if (kind.word().equals(word)) return Optional.of(kind);
            return Optional.empty();
        }

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Why a place is doubtful; bits of the doubt map, see the imaging core's enumeration of the same order. */
    static final int JUMP = 2;

    static final int SOFT = 4;
    static final int OVERRIDDEN = 8;

    /** A line is this part of the picture wide. */
    private static final int LINES_ACROSS = 350;
    /** Some ten megabytes each. */
    private static final int KEPT = 2;

    private final RunFiles files;
    private final Records records;
    private final Map<Long, Maps> kept = new LinkedHashMap<>();

    Layers(RunFiles files, Records records) {
        this.files = files;
        this.records = records;
    }

    /** PNG of a map's size. Empty if there is no such map. */
    public Optional<byte[]> picture(long run, String word) throws IOException {
        Optional<Kind> kind = Kind.of(word);
        Optional<Maps> maps = kind.isPresent() ? maps(run) : Optional.empty();
        if (maps.isEmpty()) {
            return Optional.empty();
        }
        int frames = records.find(run).map(r -> r.blended().size()).orElse(1);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(coloured(maps.get(), kind.get(), frames), "png", out);
        return Optional.of(out.toByteArray());
    }

    /**
     * The values at a place.
     *
     * @param rank of the frame that it mostly came from
     * @param depth position in the sweep; NaN where nothing decided it
     * @param doubt bits
     */
    record Values(int rank, double depth, int doubt) {}

    /** @param width of the composite, pixels; the place lies inside it. @return empty if the run has no maps */
    Optional<Values> at(long run, int width, double x, double y) throws IOException {
        return maps(run).map(maps -> {
            // Reduced by a whole factor; what did not fill a pixel of them was left out.
            int n = Math.max(1, width / maps.width());
            int column = Math.max(0, Math.min(maps.width() - 1, (int) (x / n)));
            int row = Math.max(0, Math.min(maps.height() - 1, (int) (y / n)));
            int at = row * maps.width() + column;
            int depth = maps.codes(Kind.DEPTH)[at];
            return new Values(
                    maps.codes(Kind.SOURCE)[at],
                    depth == Maps.UNDECIDED ? Double.NaN : depth / 256.0,
                    maps.codes(Kind.DOUBT)[at]);
        });
    }

    private synchronized Optional<Maps> maps(long run) throws IOException {
        Maps known = kept.get(run);
        if (known != null) {
            return Optional.of(known);
        }
        Optional<Path> folder = files.review(run);
        Optional<Maps> read = folder.isPresent() ? Maps.read(folder.get()) : Optional.empty();
        if (read.isPresent()) {
            if (kept.size() == KEPT) kept.remove(kept.keySet().iterator().next());
            kept.put(run, read.get());
        }
        return read;
    }

    private static BufferedImage coloured(Maps maps, Kind kind, int frames) {
        BufferedImage out = new BufferedImage(maps.width(), maps.height(), BufferedImage.TYPE_INT_ARGB);
        int[] to = ((DataBufferInt) out.getRaster().getDataBuffer()).getData();
        int[] from = kind == Kind.DOUBT ? widened(maps) : maps.codes(kind);
        for (int i = 0; i < to.length; i++) {
            to[i] = switch (kind) {
                case SOURCE -> Ramp.of(from[i], frames);
                case DEPTH -> from[i] == Maps.UNDECIDED ? CLEAR : Ramp.of(from[i] / 256.0, frames);
                case DOUBT -> pattern(from[i], i % maps.width(), i / maps.width());
            };
        }
        return out;
    }

    /** Doubts with the lines where depths meet made wide enough to be seen when the whole picture is. */
    private static int[] widened(Maps maps) {
        int[] doubts = maps.codes(Kind.DOUBT);
        int[] wide = doubts.clone();
        int reach = Math.max(1, maps.width() / LINES_ACROSS / 2);
        for (int i = 0; i < doubts.length; i++) {
            if ((doubts[i] & JUMP) == 0) continue;
            int x = i % maps.width();
            int y = i / maps.width();
            for (int v = Math.max(0, y - reach); v <= Math.min(maps.height() - 1, y + reach); v++) {
                for (int u = Math.max(0, x - reach); u <= Math.min(maps.width() - 1, x + reach); u++) {
                    wide[v * maps.width() + u] |= JUMP;
                }
            }
        }
        return wide;
    }

    /** Each doubt has a pattern of its own, so that colour does not say it alone. */
    private static int pattern(int bits, int x, int y) {
        if ((bits & OVERRIDDEN) != 0) {
            return x % 6 == 0 || y % 6 == 0 ? 0xFF1F4E9C : 0x401F4E9C;
        }
        if ((bits & SOFT) != 0) {
            return x % 4 < 2 && y % 4 < 2 ? 0xFF9C2F22 : 0x409C2F22;
        }
        return (bits & JUMP) != 0 ? 0xFFE0A11B : CLEAR;
    }
}
