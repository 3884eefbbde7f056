package org.stook.scenes.bracket;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Draws the pose and the exposure of every frame of a plan. */
final class Poses {
    private Poses() {}

    static List<Pose> of(BracketPlan plan) {
        SplittableRandom random = new SplittableRandom(plan.seed());
        double[][] drawn = new double[plan.frames()][];
        for (int i = 0; i < drawn.length; i++) drawn[i] = draw(plan, random, i);
        double[] reference = drawn[plan.reference()];
        List<Pose> poses = new ArrayList<>();
        for (int i = 0; i < drawn.length; i++) {
            // The reference frame is the origin: its own shift and turn are taken from all.
            double radians = StrictMath.toRadians(drawn[i][2] - reference[2]);
            double scale = 1 + plan.motion().breathing() * (i - plan.reference());
            poses.add(new Pose(
                    scale,
                    radians,
                    drawn[i][0] - reference[0],
                    drawn[i][1] - reference[1],
                    (plan.width() - 1) / 2.0,
                    (plan.height() - 1) / 2.0));
        }
        return List.copyOf(poses);
    }

    private static double[] draw(BracketPlan plan, SplittableRandom random, int index) {
        double x = plan.motion().shift() * (2 * random.nextDouble() - 1);
        double y = plan.motion().shift() * (2 * random.nextDouble() - 1);
        double turn = plan.motion().turn() * (2 * random.nextDouble() - 1);
        for (Bump bump : plan.bumps()) {
            if (!bump.hits(index)) continue;
            x += bump.x();
            y += bump.y();
        }
        return new double[] {x, y, turn};
    }

    /** Exposure of every frame as a factor of linear light. */
    static double[] gains(BracketPlan plan) {
        SplittableRandom random = new SplittableRandom(plan.seed() + 7);
        double[] gains = new double[plan.frames()];
        for (int i = 0; i < gains.length; i++) {
            gains[i] = StrictMath.pow(2, plan.flicker() * (2 * random.nextDouble() - 1));
        }
        return gains;
    }
}
