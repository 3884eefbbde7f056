package org.stook.scenes.subject;

import java.util.ArrayList;
import java.util.List;

/** One layer of needles of similar depth; where they cross the nearest wins. */
final class Needles implements Sheet {
    private static final Tint DARK = new Tint(0.10, 0.22, 0.08);
    private static final Tint PALE = new Tint(0.72, 0.80, 0.42);
    /** Cells of the grid that finds the needles about a point. */
    private static final double CELL = 0.02;

    private static final int COLUMNS = 100;
    private static final int ROWS = 60;

    private final List<Needle> needles;
    private final List<List<Needle>> cells;
    private final Grain grain;
    private final double pixel;
    private final Extent extent;

    Needles(List<Needle> needles, Grain grain, double pixel) {
        this.needles = List.copyOf(needles);
        this.grain = grain;
        this.pixel = pixel;
        double near = needles.stream().mapToDouble(n -> n.tip().z()).min().orElse(0);
        double far = needles.stream().mapToDouble(n -> n.foot().z()).max().orElse(1);
        extent = new Extent(-0.95, -0.55, 0.95, 0.55, near / Mineral.RELIEF, far / Mineral.RELIEF);
        cells = new ArrayList<>();
        for (int k = 0; k < COLUMNS * ROWS; k++) {
            cells.add(about((k % COLUMNS - COLUMNS / 2 + 0.5) * CELL, (k / COLUMNS - ROWS / 2 + 0.5) * CELL));
        }
    }

    private List<Needle> about(double x, double y) {
        double reach = CELL + 3 * pixel;
        return needles.stream()
                .filter(n -> Math.abs(n.place(x, y).beside()) < reach + n.width())
                .toList();
    }

    @Override
    public void sample(double x, double y, Hit hit) {
        hit.miss((extent.near() + extent.far()) / 2);
        int column = (int) Math.floor(x / CELL) + COLUMNS / 2;
        int row = (int) Math.floor(y / CELL) + ROWS / 2;
        if (column < 0 || row < 0 || column >= COLUMNS || row >= ROWS) return;
        double closest = Double.POSITIVE_INFINITY;
        double uncovered = 1;
        Hit one = new Hit();
        for (Needle needle : cells.get(row * COLUMNS + column)) {
            Needle.Place place = needle.place(x, y);
            double half = needle.halfWidth(place.along(), pixel);
            double outside = Math.abs(place.beside()) - half;
            double depth = needle.depthAt(place.along()) / Mineral.RELIEF;
            if (hit.cover == 0 && outside < closest) {
                closest = outside;
                hit.depth = depth;
            }
            if (outside >= pixel) continue;
            one.cover = Edges.cover(-outside, pixel);
            one.depth = depth;
            paint(one, needle, place, half);
            uncovered *= 1 - one.cover;
            lay(one, hit);
        }
        hit.cover = 1 - uncovered;
    }

    /** Lays one needle into what other needles have left there; needles come from far to near. */
    private static void lay(Hit one, Hit hit) {
        double share = hit.cover == 0 ? 1 : one.cover;
        hit.mix(new Tint(one.red, one.green, one.blue), share);
        if (hit.cover == 0 || one.cover >= 0.5) hit.depth = one.depth;
        hit.cover = 1 - (1 - hit.cover) * (1 - one.cover);
    }

    private void paint(Hit one, Needle needle, Needle.Place place, double half) {
        double run = place.along() * needle.length() / (Grain.FINEST * pixel);
        double rings =
                0.16 * grain.at(run, 7 + 91 * needle.shade()) + 0.16 * grain.at(run / 4, 55 + 91 * needle.shade());
        double light = Math.max(
                0.04,
                needle.lightAt(place.beside() / half, half / pixel) * (1 + rings) * (0.75 + 0.5 * needle.shade()));
        double pale = Edges.clamp(place.along() * 0.9 + 0.3 * needle.shade() - 0.1);
        one.colour(DARK.mixed(PALE, pale), light);
    }

    @Override
    public Extent extent() {
        return extent;
    }
}
