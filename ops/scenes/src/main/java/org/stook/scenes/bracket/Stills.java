package org.stook.scenes.bracket;

import org.stook.scenes.subject.Subject;

/** Frames that are no part of a sweep, as they stray into a studio's folders. All in linear light, with noise. */
public final class Stills {
    private static final Pose WIDER = new Pose(0.55, 0.14, 31, -17, 0, 0);

    private Stills() {}

    /** The lens cap was on: nothing but read noise. */
    public static Picture black(BracketPlan plan) {
        Picture picture = Picture.black(plan.width(), plan.height());
        Exposure.addNoise(picture, plan, -1);
        return picture;
    }

    /** A test shot of the same subject with another framing, focused in the middle. */
    public static Picture testShot(Bracket bracket) {
        BracketPlan plan = bracket.plan();
        Pose pose = new Pose(
                WIDER.scale(),
                WIDER.radians(),
                WIDER.shiftX() * plan.width() / 1000,
                WIDER.shiftY() * plan.width() / 1000,
                (plan.width() - 1) / 2.0,
                (plan.height() - 1) / 2.0);
        Picture picture = bracket.look(pose, (plan.frames() - 1) / 2.0);
        Exposure.addNoise(picture, plan, -2);
        return picture;
    }

    /** One sharp frame of a card, of the size and noise of this plan. */
    public static Picture card(Subject card, BracketPlan plan) {
        BracketPlan one = BracketPlan.of(plan.width(), plan.height(), 1, plan.seed())
                .withNoise(plan.noise())
                .withFlicker(0);
        return Bracket.of(card, one).linear(0);
    }
}
