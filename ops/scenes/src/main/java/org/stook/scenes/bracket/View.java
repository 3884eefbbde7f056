package org.stook.scenes.bracket;

import org.stook.scenes.optics.Sweep;
import org.stook.scenes.subject.Extent;

/** How one frame looks at the subject: from its pixels to points of the subject, and how blurred a depth is. */
final class View {
    private final BracketPlan plan;
    private final Sweep sweep;
    private final double frame;
    private final double[] toReference;
    private final double[] toFrame;

    View(BracketPlan plan, Pose pose, double frame) {
        this.plan = plan;
        this.frame = frame;
        sweep = plan.rig().sweep(plan.width());
        toReference = pose.inverse();
        toFrame = pose.placement();
    }

    /** Subject coordinate, in picture heights, under a frame pixel. */
    double subjectX(double x, double y) {
        double reference = toReference[0] * x + toReference[1] * y + toReference[2];
        return (reference - (plan.width() - 1) / 2.0) * plan.pixel();
    }

    double subjectY(double x, double y) {
        double reference = toReference[3] * x + toReference[4] * y + toReference[5];
        return (reference - (plan.height() - 1) / 2.0) * plan.pixel();
    }

    double blurRadius(double depth) {
        return sweep.blurRadius(plan.span().position(depth), frame);
    }

    /** Blur grows to both sides of the focus, so the greatest within an extent is at one of its ends. */
    double greatestBlur(Extent extent) {
        return Math.max(blurRadius(extent.near()), blurRadius(extent.far()));
    }

    /** The frame pixels that an extent can cover, not cut to the frame. */
    Box box(Extent extent) {
        double left = 1e9;
        double top = 1e9;
        double right = -1e9;
        double bottom = -1e9;
        for (int corner = 0; corner < 4; corner++) {
            double u = (corner & 1) == 0 ? extent.minX() : extent.maxX();
            double v = (corner & 2) == 0 ? extent.minY() : extent.maxY();
            double x = u / plan.pixel() + (plan.width() - 1) / 2.0;
            double y = v / plan.pixel() + (plan.height() - 1) / 2.0;
            double frameX = toFrame[0] * x + toFrame[1] * y + toFrame[2];
            double frameY = toFrame[3] * x + toFrame[4] * y + toFrame[5];
            left = Math.min(left, frameX);
            right = Math.max(right, frameX);
            top = Math.min(top, frameY);
            bottom = Math.max(bottom, frameY);
        }
        return new Box(floor(left), floor(top), floor(right) + 2, floor(bottom) + 2);
    }

    private static int floor(double v) {
        return (int) Math.floor(Math.max(-1e8, Math.min(1e8, v)));
    }
}
