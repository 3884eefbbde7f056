package org.stook.imaging.slate;

import java.util.ArrayList;
import java.util.List;

/** Connected sets of marked pixels (four neighbours). */
final class Blobs {
    /**
     * One set.
     *
     * @param pixels how many
     * @param ends the leftmost and rightmost pixel of each of its rows, enough for its hull
     * @param left smallest x; the others likewise
     */
    record Blob(int pixels, List<OrientedBox.Point> ends, int left, int top, int right, int bottom) {
        boolean touches(int width, int height) {
            return left == 0 || top == 0 || right == width - 1 || bottom == height - 1;
        }
    }

    private final boolean[] marked;
    private final int width;
    private final int height;
    private final int[] stack;

    private Blobs(boolean[] marked, int width, int height) {
        this.marked = marked.clone();
        this.width = width;
        this.height = height;
        this.stack = new int[marked.length];
    }

    /** Those of at least so many pixels, in the order of their topmost rows. */
    static List<Blob> of(boolean[] marked, int width, int height, int fewest) {
        Blobs blobs = new Blobs(marked, width, height);
        List<Blob> found = new ArrayList<>();
        for (int i = 0; i < marked.length; i++) {
            if (!blobs.marked[i]) continue;
            Blob blob = blobs.from(i);
            if (blob.pixels() >= fewest) found.add(blob);
        }
        return found;
    }

    private Blob from(int seed) {
        int[] lefts = new int[height];
        int[] rights = new int[height];
        java.util.Arrays.fill(lefts, Integer.MAX_VALUE);
        java.util.Arrays.fill(rights, -1);
        int depth = 0;
        int pixels = 0;
        stack[depth++] = seed;
        marked[seed] = false;
        while (depth > 0) {
            int at = stack[--depth];
            int x = at % width;
            int y = at / width;
            pixels++;
            lefts[y] = Math.min(lefts[y], x);
            rights[y] = Math.max(rights[y], x);
            if (x > 0) depth = push(at - 1, depth);
            if (x < width - 1) depth = push(at + 1, depth);
            if (y > 0) depth = push(at - width, depth);
            if (y < height - 1) depth = push(at + width, depth);
        }
        return blob(pixels, lefts, rights);
    }

    private int push(int at, int depth) {
        if (!marked[at]) return depth;
        marked[at] = false;
        stack[depth] = at;
        return depth + 1;
    }

    private Blob blob(int pixels, int[] lefts, int[] rights) {
        List<OrientedBox.Point> ends = new ArrayList<>();
        int left = width;
        int right = 0;
        int top = height;
        int bottom = 0;
        for (int y = 0; y < height; y++) {
            if (rights[y] < 0) continue;
            ends.add(new OrientedBox.Point(lefts[y], y));
            ends.add(new OrientedBox.Point(rights[y], y));
            left = Math.min(left, lefts[y]);
            right = Math.max(right, rights[y]);
            top = Math.min(top, y);
            bottom = y;
        }
        return new Blob(pixels, ends, left, top, right, bottom);
    }
}
