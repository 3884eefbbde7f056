package org.stook.imaging.slate;

import java.util.ArrayList;
import java.util.List;

/** The dark clusters on one label, each in a box of its own turn. */
final class Clusters {
    /** How far apart, in pixels of the full picture, dark parts of one code may lie: small and large modules, bars. */
    private static final double[] REACH = {36, 18, 8};

    private static final int LOOKED_AT = 1200;
    private static final double NARROWEST = 30;
    private static final int MOST = 16;

    private Clusters() {}

    static List<OrientedBox> on(OrientedBox label, GreyPicture full) {
        double scale = Math.min(1, LOOKED_AT / Math.max(label.width(), label.height()));
        GreyPicture cut = full.upright(label, scale);
        boolean[] dark = Dark.mask(cut);
        List<OrientedBox> found = new ArrayList<>();
        for (double reach : REACH) {
            int r = Math.max(1, (int) Math.round(reach * scale));
            boolean[] spread = Dark.spread(dark, cut.width(), cut.height(), r);
            for (Blobs.Blob blob : Blobs.of(spread, cut.width(), cut.height(), 9 * r * r)) {
                OrientedBox box = OrientedBox.around(blob.ends()).grown(-r);
                if (Math.min(box.width(), box.height()) < NARROWEST * scale) continue;
                OrientedBox placed = placed(box, label, cut, scale);
                if (found.size() < MOST && found.stream().noneMatch(other -> same(other, placed))) found.add(placed);
            }
        }
        return found;
    }

    /** From pixels of the cut to pixels of the full picture. */
    private static OrientedBox placed(OrientedBox box, OrientedBox label, GreyPicture cut, double scale) {
        double u = (box.x() - (cut.width() - 1) / 2.0) / scale;
        double v = (box.y() - (cut.height() - 1) / 2.0) / scale;
        double cos = Math.cos(label.angle());
        double sin = Math.sin(label.angle());
        return new OrientedBox(
                label.x() + u * cos - v * sin,
                label.y() + u * sin + v * cos,
                box.width() / scale,
                box.height() / scale,
                label.angle() + box.angle());
    }

    private static boolean same(OrientedBox a, OrientedBox b) {
        double near = 6;
        return Math.hypot(a.x() - b.x(), a.y() - b.y()) < near
                && Math.abs(a.width() - b.width()) < 2 * near
                && Math.abs(a.height() - b.height()) < 2 * near;
    }
}
