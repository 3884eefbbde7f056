package org.stook.scenes.subject;

import java.util.ArrayList;
import java.util.List;

/** The order in which sheets that hide each other have to be laid. */
final class Painting {
    private static final int GRID = 40;

    private Painting() {}

    /** The sheets so ordered that of two that overlap the one that is nearer, where they do, comes later. */
    static <S extends Sheet> List<S> backToFront(List<S> sheets) {
        List<S> left = new ArrayList<>(sheets);
        List<S> ordered = new ArrayList<>();
        while (!left.isEmpty()) {
            S next = left.stream()
                    .filter(s -> left.stream().noneMatch(other -> s != other && liesBefore(s, other)))
                    .findFirst()
                    .orElse(left.get(0)); // a ring of sheets, each before the next: no order is right
            left.remove(next);
            ordered.add(next);
        }
        return ordered;
    }

    private static boolean liesBefore(Sheet a, Sheet b) {
        Extent e = a.extent();
        Extent f = b.extent();
        double left = Math.max(e.minX(), f.minX());
        double top = Math.max(e.minY(), f.minY());
        double stepX = (Math.min(e.maxX(), f.maxX()) - left) / GRID;
        double stepY = (Math.min(e.maxY(), f.maxY()) - top) / GRID;
        if (stepX <= 0 || stepY <= 0) return false;
        Hit one = new Hit();
        Hit other = new Hit();
        double balance = 0;
        for (double y = top + stepY / 2; y < top + GRID * stepY; y += stepY) {
            for (double x = left + stepX / 2; x < left + GRID * stepX; x += stepX) {
                a.sample(x, y, one);
                b.sample(x, y, other);
                if (one.cover > 0 && other.cover > 0) balance += other.depth - one.depth;
            }
        }
        return balance > 0;
    }
}
