package org.stook.scenes.subject;

import java.util.List;

/** A flat card that fills the frame, half way through the subject's depth. */
record Card(String name, String title, CardPainter painter) implements Subject {
    private static final double DEPTH = 0.5;

    @Override
    public List<Sheet> sheets(double pixel) {
        FlatPart.Finish finish = painter.finish(pixel);
        return List.of(new Sheet() {
            @Override
            public void sample(double x, double y, Hit hit) {
                hit.depth = DEPTH;
                hit.cover = 1;
                finish.paint(x, y, hit);
            }

            @Override
            public Extent extent() {
                return Extent.everywhere(DEPTH, DEPTH);
            }
        });
    }

    /** What is printed on a card, for a pixel of this size in picture heights. */
    @FunctionalInterface
    interface CardPainter {
        FlatPart.Finish finish(double pixel);
    }
}
