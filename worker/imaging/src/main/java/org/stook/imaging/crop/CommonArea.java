package org.stook.imaging.crop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

/**
 * The largest rectangle of one aspect ratio, in reference pixels, that lies inside every placed frame.
 *
 * <p>Each frame's outline is a convex quadrilateral in reference coordinates, so "a box of size s centred at c lies
 * inside all of them" is a set of linear constraints in (c, s). Feasible s form an interval from 0, found by bisection;
 * for each s the feasible centres are a clipped polygon.
 */
public final class CommonArea {
    private static final int BISECTIONS = 50;
    private static final int SMALLEST = 16;

    private final int width;
    private final int height;
    private final double inset;
    private final double ratio;

    /**
     * @param width of the frames, pixels
     * @param height of the frames, pixels
     * @param support pixels that resampling needs around a point
     */
    public CommonArea(int width, int height, int support, CropRule rule) {
        this.width = width;
        this.height = height;
        this.inset = support + rule.margin();
        this.ratio = rule.ratio().orElse((double) width / height);
    }

    /** Empty if the frames have no usable area in common (less than 16 pixels on a side). */
    public Optional<Area> of(List<Placement> placements) {
        List<HalfPlane> inside = new ArrayList<>();
        placements.forEach(p -> inside.addAll(outline(p)));
        double low = 0;
        double high = Math.max(height, width / ratio);
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            if (centres(inside, middle).isEmpty()) high = middle;
            else low = middle;
        }
        List<double[]> best = centres(inside, low);
        if (best.isEmpty()) return Optional.empty();
        return fit(mean(best), low, placements);
    }

    private List<HalfPlane> outline(Placement placement) {
        Placement back = placement.inverse();
        double right = width - 1 - inset;
        double bottom = height - 1 - inset;
        double[][] corners = {
            corner(back, inset, inset),
            corner(back, right, inset),
            corner(back, right, bottom),
            corner(back, inset, bottom)
        };
        List<HalfPlane> sides = new ArrayList<>(4);
        for (int i = 0; i < 4; i++) sides.add(HalfPlane.rightOf(corners[i], corners[(i + 1) % 4]));
        return sides;
    }

    private static double[] corner(Placement back, double x, double y) {
        return new double[] {back.x(x, y), back.y(x, y)};
    }

    /** Centres of boxes {@code size} pixel steps high (one less than its rows) that lie inside; maybe none. */
    private List<double[]> centres(List<HalfPlane> inside, double size) {
        double hx = size * ratio / 2;
        double hy = size / 2;
        List<double[]> polygon = List.of(
                new double[] {0, 0}, new double[] {width, 0}, new double[] {width, height}, new double[] {0, height});
        for (HalfPlane side : inside) {
            polygon = side.forCentreOfBox(hx, hy).clip(polygon);
            if (polygon.isEmpty()) break;
        }
        return polygon;
    }

    private static double[] mean(List<double[]> points) {
        double x = points.stream().mapToDouble(p -> p[0]).average().orElseThrow();
        double y = points.stream().mapToDouble(p -> p[1]).average().orElseThrow();
        return new double[] {x, y};
    }

    /** Whole pixels: the highest box whose columns are the rows times the ratio, rounded, checked corner by corner. */
    private Optional<Area> fit(double[] centre, double size, List<Placement> placements) {
        for (int rows = (int) Math.floor(size) + 2; rows >= SMALLEST; rows--) {
            int columns = (int) Math.round(rows * ratio);
            if (columns < SMALLEST) break;
            int left = (int) Math.floor(centre[0] - (columns - 1) / 2.0);
            int top = (int) Math.floor(centre[1] - (rows - 1) / 2.0);
            for (int nudge = 0; nudge < 4; nudge++) {
                int x = left + (nudge & 1);
                int y = top + (nudge >> 1);
                if (x < 0 || y < 0) continue;
                Area area = new Area(x, y, columns, rows);
                if (placements.stream().allMatch(p -> covers(p, area))) return Optional.of(area);
            }
        }
        return Optional.empty();
    }

    private boolean covers(Placement p, Area a) {
        int right = a.x() + a.width() - 1;
        int bottom = a.y() + a.height() - 1;
        return covers(p, a.x(), a.y())
                && covers(p, right, a.y())
                && covers(p, a.x(), bottom)
                && covers(p, right, bottom);
    }

    private boolean covers(Placement p, int x, int y) {
        double fx = p.x(x, y);
        double fy = p.y(x, y);
        return fx >= inset && fy >= inset && fx <= width - 1 - inset && fy <= height - 1 - inset;
    }
}
