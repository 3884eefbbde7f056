package org.stook.app.stack;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Which of the candidates make the sweep, in order of capture, then name. Set aside are frames of another size than most,
 * and second copies of the same bytes.
 *
 * @param sweep in order
 * @param strays the others, each with its reason
 */
record Selection(List<Candidate> sweep, List<Stray> strays) {
    /** @param reason a sentence for the operator */
    record Stray(Candidate frame, String reason) {}

    private record Size(int width, int height) {
        static Size of(Candidate c) {
            return new Size(c.facts().width(), c.facts().height());
        }

        @Override
        public String toString() {
            return width + " x " + height;
        }
    }

    /** Frames without a capture time come last: a name says less about the sweep than the camera's clock. */
    private static final Comparator<Candidate> ORDER = Comparator.comparing(
                    (Candidate c) -> c.facts().capturedAt(), Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(Candidate::name)
            .thenComparing(c -> c.place().path());

    static Selection of(List<Candidate> candidates) {
        List<Candidate> ordered = candidates.stream().sorted(ORDER).toList();
        List<Candidate> sweep = new ArrayList<>();
        List<Stray> strays = new ArrayList<>();
        Map<String, Candidate> first = new HashMap<>();
        Map<Size, Integer> counts = counts(ordered);
        @Nullable Size usual = usual(counts);
        for (Candidate c : ordered) {
            Candidate same = first.putIfAbsent(c.sha256(), c);
            if (same != null && !c.facts().kept()) {
                strays.add(new Stray(
                        c, "%s: holds the same bytes as %s, a frame is used once".formatted(c.name(), same.name())));
            } else if (!Size.of(c).equals(usual)) {
                strays.add(new Stray(
                        c,
                        "%s: is %s pixels, expected %s as in %d other frames of this stack"
                                .formatted(c.name(), Size.of(c), usual, counts.getOrDefault(usual, 0))));
            } else {
                sweep.add(c);
            }
        }
        return new Selection(sweep, strays);
    }

    private static Map<Size, Integer> counts(List<Candidate> ordered) {
        Map<Size, Integer> counts = new LinkedHashMap<>();
        ordered.forEach(c -> counts.merge(Size.of(c), 1, Integer::sum));
        return counts;
    }

    /** The most frequent; of equals the one met first. */
    private static @Nullable Size usual(Map<Size, Integer> counts) {
        Size usual = null;
        for (var entry : counts.entrySet()) {
            if (usual == null || entry.getValue() > counts.getOrDefault(usual, 0)) usual = entry.getKey();
        }
        return usual;
    }
}
