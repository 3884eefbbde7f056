package org.stook.imaging.slate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Reads whatever labels a picture shows. */
public final class Slates {
    private static final double LABEL_LONGEST = 1600;
    private static final double CLUSTER_LONGEST = 700;
    /** Small symbols are enlarged: the decoders want two pixels a module at least. */
    private static final double ENLARGED = 2;
    /** White put around a cluster, as a share of its longer side: the quiet zone the decoders look for. */
    private static final double QUIET = 0.12;
    /** A line through the smallest symbol changes at least this often; one through a blot or a line of a frame does not. */
    private static final double CHANGES = 4;

    private Slates() {}

    /** Reads a picture of any size; takes a fraction of a second where it shows no label. */
    public static SlateReading read(GreyPicture picture) {
        LabelFinder finder = new LabelFinder(picture);
        List<SlateCode> codes = new ArrayList<>();
        int unread = 0;
        for (OrientedBox label : finder.labels()) {
            int before = codes.size();
            boolean inked = readLabel(finder, label, picture, codes);
            if (inked && codes.size() == before && codes.stream().noneMatch(code -> covers(label, code))) unread++;
        }
        codes.sort(Comparator.comparingInt(SlateCode::y).thenComparingInt(SlateCode::x));
        return new SlateReading(codes, unread);
    }

    /** @return whether the label carries anything like a code */
    private static boolean readLabel(
            LabelFinder finder, OrientedBox label, GreyPicture picture, List<SlateCode> codes) {
        boolean inked = false;
        for (OrientedBox cluster : Clusters.on(label, picture)) {
            double quiet = QUIET * Math.max(cluster.width(), cluster.height());
            Cut tight = finder.cut(cluster, CLUSTER_LONGEST, ENLARGED);
            if (Dark.changes(tight.picture()) < CHANGES) continue;
            inked = true;
            note(SlateReaders.first(finder.cut(cluster.grown(quiet), CLUSTER_LONGEST, ENLARGED)), codes);
        }
        // A symbol that fell apart into clusters, or that is torn from its quiet zone by print beside it.
        if (inked && codes.stream().noneMatch(code -> covers(label, code))) {
            note(SlateReaders.first(finder.cut(label, LABEL_LONGEST, 1)), codes);
        }
        return inked;
    }

    private static boolean covers(OrientedBox label, SlateCode code) {
        return Math.hypot(code.x() - label.x(), code.y() - label.y()) < Math.hypot(label.width(), label.height()) / 2;
    }

    private static void note(Optional<SlateCode> code, List<SlateCode> codes) {
        code.filter(c -> codes.stream()
                        .noneMatch(
                                k -> k.text().equals(c.text()) && k.symbology().equals(c.symbology())))
                .ifPresent(codes::add);
    }
}
