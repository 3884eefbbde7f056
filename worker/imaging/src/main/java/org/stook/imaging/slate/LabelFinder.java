package org.stook.imaging.slate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds light, straight-sided things that may be labels, and on them the dark clusters that may be codes. All boxes are in
 * pixels of the full picture.
 */
final class LabelFinder {
    /** Long side at which labels are looked for. */
    private static final int LOOKED_AT = 1500;
    /** Shares of the picture's light end (the level of its lightest {@value #LIGHT_END}th) above which something is light. */
    private static final double[] LIGHT = {0.8, 0.62, 0.48};
    /** A small label is no more of the picture than this. */
    private static final int LIGHT_END = 5000;

    private static final int SMALLEST = 500;
    private static final int NARROWEST = 18;
    /** A straight-sided thing fills its box. */
    private static final double STRAIGHT = 0.8;

    private static final int MOST_LABELS = 10;

    private final GreyPicture full;
    private final int n;
    private final GreyPicture small;

    LabelFinder(GreyPicture full) {
        this.full = full;
        this.n = Math.max(1, (Math.max(full.width(), full.height()) + LOOKED_AT - 1) / LOOKED_AT);
        this.small = full.reduced(n);
    }

    /** The largest first. */
    List<OrientedBox> labels() {
        List<OrientedBox> found = new ArrayList<>();
        int lightEnd = lightEnd();
        for (double share : LIGHT) {
            boolean[] light = lighter((int) (share * lightEnd));
            for (Blobs.Blob blob : Blobs.of(light, small.width(), small.height(), SMALLEST)) {
                OrientedBox box = OrientedBox.around(blob.ends());
                if (straight(blob, box) && found.stream().noneMatch(other -> same(other, box))) found.add(box);
            }
        }
        return found.stream()
                .sorted(Comparator.comparingDouble(OrientedBox::area).reversed())
                .limit(MOST_LABELS)
                .map(box -> box.scaled(n))
                .toList();
    }

    private int lightEnd() {
        int[] counts = new int[256];
        for (byte level : small.levels()) counts[level & 0xFF]++;
        int left = small.levels().length / LIGHT_END;
        int level = 255;
        while (level > 0 && left >= counts[level]) left -= counts[level--];
        return level;
    }

    private boolean[] lighter(int than) {
        boolean[] light = new boolean[small.levels().length];
        for (int i = 0; i < light.length; i++) light[i] = (small.levels()[i] & 0xFF) >= than;
        return light;
    }

    private static boolean straight(Blobs.Blob blob, OrientedBox box) {
        if (Math.min(box.width(), box.height()) < NARROWEST) return false;
        double spanned = 0;
        for (int i = 0; i < blob.ends().size(); i += 2) {
            spanned += blob.ends().get(i + 1).x() - blob.ends().get(i).x() + 1;
        }
        return spanned >= STRAIGHT * box.area();
    }

    private static boolean same(OrientedBox a, OrientedBox b) {
        double near = 0.05 * Math.max(a.width(), a.height()) + 2;
        return Math.hypot(a.x() - b.x(), a.y() - b.y()) < near
                && Math.abs(a.width() - b.width()) < 2 * near
                && Math.abs(a.height() - b.height()) < 2 * near;
    }

    /** The label upright, its long side at most {@code longest}. */
    Cut cut(OrientedBox box, double longest, double mostScale) {
        double scale = Math.min(mostScale, longest / Math.max(box.width(), box.height()));
        return new Cut(full.upright(box, scale), (int) Math.round(box.x()), (int) Math.round(box.y()));
    }
}
