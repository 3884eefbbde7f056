package org.stook.comparison.command;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.subject.Patch;

/** Where things of a card lie in a picture; a card is measured in picture heights about the centre of the plan's reference frame. */
final class Cards {
    private Cards() {}

    /** The inner half of a patch, in the plan's reference frame. */
    static Area inner(Patch patch, BracketPlan plan) {
        double x = patch.left() + patch.size() / 2;
        double y = patch.top() + patch.size() / 2;
        return around(x, y, patch.size() / 2, plan, Placement.identity());
    }

    /**
     * A square area about a point of the card.
     *
     * @param side length in picture heights
     * @param placement pixel of the plan's reference frame to pixel of the picture
     */
    static Area around(double x, double y, double side, BracketPlan plan, Placement placement) {
        double column = x / plan.pixel() + (plan.width() - 1) / 2.0;
        double row = y / plan.pixel() + (plan.height() - 1) / 2.0;
        int extent = (int) Math.round(side / plan.pixel());
        return new Area(
                (int) Math.round(placement.x(column, row)) - extent / 2,
                (int) Math.round(placement.y(column, row)) - extent / 2,
                extent,
                extent);
    }
}
