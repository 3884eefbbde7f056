package org.stook.scenes.bracket;

import java.util.List;
import org.stook.scenes.optics.Sweep;
import org.stook.scenes.subject.Sheet;
import org.stook.scenes.subject.Subject;

/** A focus bracket of one subject; frames are rendered when asked for and not kept. Safe for several threads. */
public final class Bracket {
    private final Subject subject;
    private final BracketPlan plan;
    private final List<Sheet> sheets;
    private final List<Pose> poses;
    private final double[] gains;

    private Bracket(Subject subject, BracketPlan plan) {
        this.subject = subject;
        this.plan = plan;
        sheets = subject.sheets(plan.pixel());
        poses = Poses.of(plan);
        gains = Poses.gains(plan);
    }

    /**
     * The bracket of this subject by this plan.
     *
     * @throws IllegalArgumentException if the sweep runs past what the lens can be focused at
     */
    public static Bracket of(Subject subject, BracketPlan plan) {
        plan.checkSweep();
        return new Bracket(subject, plan);
    }

    public Subject subject() {
        return subject;
    }

    public BracketPlan plan() {
        return plan;
    }

    /** Where frame {@code index} lies; its placement is exact. */
    public Pose pose(int index) {
        return poses.get(index);
    }

    /** Exposure of frame {@code index} against nominal, as a factor of linear light. */
    public double gain(int index) {
        return gains[index];
    }

    /** The focus sweep that lens and steps make. */
    public Sweep sweep() {
        return plan.rig().sweep(plan.width());
    }

    /** Frame {@code index} in linear light, with its exposure, without noise. */
    public Picture clean(int index) {
        Picture picture = look(poses.get(index), index);
        Exposure.amplify(picture, gains[index]);
        return picture;
    }

    /** The subject in linear light from any pose, focused on any sweep position, at nominal exposure without noise. */
    public Picture look(Pose pose, double focus) {
        Picture picture = Picture.black(plan.width(), plan.height());
        new Renderer(sheets, new View(plan, pose, focus), picture).render();
        return picture;
    }

    /** Frame {@code index} in linear light as the sensor counts it: with exposure and noise, not clipped. */
    public Picture linear(int index) {
        Picture picture = clean(index);
        Exposure.addNoise(picture, plan, index);
        return picture;
    }

    /** Frame {@code index} as a camera writes it: encoded by sRGB, 0 to 1. */
    public Picture encoded(int index) {
        return linear(index).encoded();
    }

    /** What a perfect composite in the reference frame's geometry and exposure would be, and all that is known besides. */
    public Truth truth() {
        return truthIn(plan.reference());
    }

    /** The same in the geometry and exposure of frame {@code index}, for a composite that was aligned to that frame. */
    public Truth truthIn(int index) {
        return Truth.of(this, sheets, index);
    }
}
