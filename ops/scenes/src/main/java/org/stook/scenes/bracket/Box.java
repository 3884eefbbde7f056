package org.stook.scenes.bracket;

/** Pixels from (left, top) up to, without, (right, bottom). */
record Box(int left, int top, int right, int bottom) {
    Box grown(int by) {
        return new Box(left - by, top - by, right + by, bottom + by);
    }

    Box within(Box other) {
        return new Box(
                Math.max(left, other.left),
                Math.max(top, other.top),
                Math.min(right, other.right),
                Math.min(bottom, other.bottom));
    }

    boolean isEmpty() {
        return right <= left || bottom <= top;
    }

    int width() {
        return right - left;
    }

    int height() {
        return bottom - top;
    }
}
