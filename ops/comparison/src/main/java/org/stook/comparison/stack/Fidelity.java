package org.stook.comparison.stack;

import org.stook.comparison.metrics.Psnr;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.Truth;

/**
 * Peak signal-to-noise ratio of a composite against the truth, decibels.
 *
 * @param subject over the pixels of the subject
 * @param silhouette over the pixels at most 4 px from a jump in depth
 * @param all over all pixels, the backdrop too, which no frame shows sharply
 */
public record Fidelity(double subject, double silhouette, double all) {
    private static final int BAND = 4;

    /** Judges one area of the truth's frame; the composite begins at ({@code at.x()}, {@code at.y()}) of it. */
    public static Fidelity of(Frame composite, Area at, Truth truth, Area judged) {
        Frame wanted = cut(SceneStack.frame(truth.encoded()), judged);
        Area inside = new Area(judged.x() - at.x(), judged.y() - at.y(), judged.width(), judged.height());
        Frame got = cut(composite, inside);
        int width = truth.linear().width();
        return new Fidelity(
                Psnr.of(got, wanted, cut(truth.subject(), width, judged)),
                Psnr.of(got, wanted, cut(truth.silhouette(BAND), width, judged)),
                Psnr.of(got, wanted));
    }

    private static boolean[] cut(boolean[] mask, int width, Area area) {
        boolean[] out = new boolean[area.width() * area.height()];
        for (int y = 0; y < area.height(); y++) {
            System.arraycopy(mask, (area.y() + y) * width + area.x(), out, y * area.width(), area.width());
        }
        return out;
    }

    /** A part of a frame, copied. */
    public static Frame cut(Frame frame, Area area) {
        if (!Area.whole(frame.width(), frame.height()).contains(area)) {
            throw new IllegalArgumentException(
                    "%s does not lie in a picture of %d x %d".formatted(area, frame.width(), frame.height()));
        }
        Frame out = Frame.blank(area.width(), area.height(), frame.channels());
        for (int c = 0; c < frame.channels(); c++) {
            Plane from = frame.plane(c);
            for (int y = 0; y < area.height(); y++) {
                int start = (area.y() + y) * from.width() + area.x();
                System.arraycopy(from.samples(), start, out.plane(c).samples(), y * area.width(), area.width());
            }
        }
        return out;
    }

    /** What two areas share, less a margin of pixels all round. */
    public static Area shared(Area a, Area b, int margin) {
        int x = Math.max(a.x(), b.x()) + margin;
        int y = Math.max(a.y(), b.y()) + margin;
        int right = Math.min(a.x() + a.width(), b.x() + b.width()) - margin;
        int bottom = Math.min(a.y() + a.height(), b.y() + b.height()) - margin;
        return new Area(x, y, right - x, bottom - y);
    }
}
