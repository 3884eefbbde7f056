package org.stook.scenes.bracket;

import java.util.List;
import org.stook.scenes.optics.SensorNoise;

/**
 * All that settles a bracket but its subject. Start from {@link #of} and change what matters.
 *
 * @param width of every frame, pixels
 * @param height of every frame, pixels
 * @param frames how many, near to far
 * @param reference the frame that has the placement of identity, from 0
 * @param seed number that shifts, turns, flicker and noise come from
 * @param motion how the frames move
 * @param flicker greatest change of exposure to each side, EV
 * @param noise of the sensor
 * @param rig lens and sensor
 * @param span where the subject lies in the sweep
 * @param bumps knocks against the table
 */
public record BracketPlan(
        int width,
        int height,
        int frames,
        int reference,
        long seed,
        Motion motion,
        double flicker,
        SensorNoise noise,
        Rig rig,
        Span span,
        List<Bump> bumps) {

    public BracketPlan {
        if (width < 16 || height < 16 || frames < 1 || reference < 0 || reference >= frames) {
            throw new IllegalArgumentException("cannot plan " + frames + " frames of " + width + " x " + height
                    + " with frame " + reference + " as reference: at least one frame of 16 x 16 is needed");
        }
        bumps = List.copyOf(bumps);
    }

    /** @throws IllegalArgumentException if the lens cannot be focused as far as the sweep goes */
    void checkSweep() {
        if (!rig.sweep(width).reaches(Math.max(span.far(), frames - 1))) {
            throw new IllegalArgumentException("the sweep runs past infinity: fewer frames than " + frames
                    + ", more pixels than " + width + " across or a smaller circle of confusion are needed");
        }
    }

    /** Usual motion, 0.05 EV flicker, clean noise; the sweep begins half a frame before the subject and ends behind it. */
    public static BracketPlan of(int width, int height, int frames, long seed) {
        Span span = frames > 2 ? new Span(0.5, frames - 1.5) : new Span(0, frames - 1);
        return new BracketPlan(
                width,
                height,
                frames,
                frames / 2,
                seed,
                Motion.USUAL,
                0.05,
                SensorNoise.CLEAN,
                Rig.USUAL,
                span,
                List.of());
    }

    /** Size of a pixel of the reference frame in picture heights (the shorter side is 1). */
    public double pixel() {
        return 1.0 / Math.min(width, height);
    }

    /** Frames of another size of the same subject: the same framing along the shorter side. */
    public BracketPlan withSize(int columns, int rows) {
        return new BracketPlan(columns, rows, frames, reference, seed, motion, flicker, noise, rig, span, bumps);
    }

    public BracketPlan withReference(int frame) {
        return new BracketPlan(width, height, frames, frame, seed, motion, flicker, noise, rig, span, bumps);
    }

    public BracketPlan withMotion(Motion other) {
        return new BracketPlan(width, height, frames, reference, seed, other, flicker, noise, rig, span, bumps);
    }

    /** Breathing such that the scale changes by {@code total} from the first to the last frame; 0.11 is 11 %. */
    public BracketPlan withTotalBreathing(double total) {
        return withMotion(new Motion(total / Math.max(1, frames - 1), motion.shift(), motion.turn()));
    }

    public BracketPlan withFlicker(double ev) {
        return new BracketPlan(width, height, frames, reference, seed, motion, ev, noise, rig, span, bumps);
    }

    public BracketPlan withNoise(SensorNoise other) {
        return new BracketPlan(width, height, frames, reference, seed, motion, flicker, other, rig, span, bumps);
    }

    public BracketPlan withRig(Rig other) {
        return new BracketPlan(width, height, frames, reference, seed, motion, flicker, noise, other, span, bumps);
    }

    public BracketPlan withSpan(Span other) {
        return new BracketPlan(width, height, frames, reference, seed, motion, flicker, noise, rig, other, bumps);
    }

    public BracketPlan withBumps(Bump... others) {
        return new BracketPlan(
                width, height, frames, reference, seed, motion, flicker, noise, rig, span, List.of(others));
    }

    /** No motion, flicker or noise: nothing but focus changes. */
    public BracketPlan still() {
        return withMotion(Motion.NONE).withFlicker(0).withNoise(SensorNoise.NONE);
    }
}
