package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import org.stook.imaging.frame.Plane;

/** Frames that cannot belong to the sweep: black, blown, of another size or of another subject. */
final class Misfits {
    private static final double ALL = 0.98;
    /** Thumbnails of one sweep correlate far better than this, thumbnails of two subjects far worse. */
    private static final double ALIKE = 0.75;

    private Misfits() {}

    static List<Stray> find(List<FrameSurvey> frames) {
        List<Stray> strays = new ArrayList<>();
        List<Integer> rest = new ArrayList<>();
        String usual = usualShape(frames);
        for (int f = 0; f < frames.size(); f++) {
            Stray stray = alone(f, frames.get(f), usual);
            if (stray != null) strays.add(stray);
            else rest.add(f);
        }
        // If all are black, the stack is: nothing is gained by setting every frame aside.
        if (rest.isEmpty()) return List.of();
        strays.addAll(strangers(frames, rest));
        return strays;
    }

    private static @org.jspecify.annotations.Nullable Stray alone(int f, FrameSurvey frame, String usual) {
        FrameSurvey.Exposure e = frame.exposure();
        if (e.black() > ALL) {
            return stray(f, Stray.Reason.BLACK, "is black: %.1f %% of it", 100 * e.black());
        }
        if (e.white() > ALL) {
            return stray(f, Stray.Reason.BLOWN, "is blown out: %.1f %% of it", 100 * e.white());
        }
        if (!shape(frame).equals(usual)) {
            return stray(f, Stray.Reason.OTHER_SIZE, "has another shape than the others of its stack");
        }
        return null;
    }

    private static Stray stray(int frame, Stray.Reason reason, String format, Object... values) {
        return new Stray(frame, reason, String.format(Locale.ROOT, format, values), OptionalInt.empty());
    }

    private static String shape(FrameSurvey f) {
        return f.thumbnail().width() + " x " + f.thumbnail().height() + ", " + f.tilesX() + " x " + f.tilesY();
    }

    /** The commonest shape; of equally common ones the first. */
    private static String usualShape(List<FrameSurvey> frames) {
        Map<String, Integer> counts = new HashMap<>();
        frames.forEach(f -> counts.merge(shape(f), 1, Integer::sum));
        int most = counts.values().stream().mapToInt(Integer::intValue).max().orElse(0);
        return frames.stream()
                .map(Misfits::shape)
                .filter(s -> counts.getOrDefault(s, 0) == most)
                .findFirst()
                .orElseThrow();
    }

    /** All frames outside the largest group of frames that resemble each other; none when no group is more than half. */
    private static List<Stray> strangers(List<FrameSurvey> frames, List<Integer> rest) {
        int n = rest.size();
        int[] group = new int[n];
        for (int i = 0; i < n; i++) group[i] = i;
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                if (likeness(frames.get(rest.get(i)), frames.get(rest.get(j))) < ALIKE) continue;
                int from = group[j];
                int to = group[i];
                for (int k = 0; k < n; k++) if (group[k] == from) group[k] = to;
            }
        }
        int[] sizes = new int[n];
        for (int g : group) sizes[g]++;
        int largest = 0;
        for (int g = 1; g < n; g++) if (sizes[g] > sizes[largest]) largest = g;
        List<Stray> strays = new ArrayList<>();
        if (2 * sizes[largest] <= n) return strays;
        for (int i = 0; i < n; i++) {
            if (group[i] == largest) continue;
            int f = rest.get(i);
            strays.add(stray(f, Stray.Reason.OTHER_SUBJECT, "shows another subject or framing than the sweep"));
        }
        return strays;
    }

    /** Zero-mean normalised cross-correlation of the thumbnails, 1 where either is flat and nothing can be said. */
    static double likeness(FrameSurvey a, FrameSurvey b) {
        float[] p = centred(a.thumbnail());
        float[] q = centred(b.thumbnail());
        double pp = 0;
        double qq = 0;
        double pq = 0;
        for (int i = 0; i < p.length; i++) {
            pp += p[i] * p[i];
            qq += q[i] * q[i];
            pq += p[i] * q[i];
        }
        double flat = 1e-5 * p.length;
        return pp < flat || qq < flat ? 1 : pq / Math.sqrt(pp * qq);
    }

    private static float[] centred(Plane plane) {
        float[] v = Arrays.copyOf(plane.samples(), plane.width() * plane.height());
        double sum = 0;
        for (float x : v) sum += x;
        float mean = (float) (sum / v.length);
        for (int i = 0; i < v.length; i++) v[i] -= mean;
        return v;
    }
}
