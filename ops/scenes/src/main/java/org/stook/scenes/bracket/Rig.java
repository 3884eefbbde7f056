package org.stook.scenes.bracket;

import org.stook.scenes.optics.Lens;
import org.stook.scenes.optics.Sweep;

/**
 * Lens and sensor, and how fine the steps of the sweep are.
 *
 * @param lens the lens
 * @param magnification at the first frame
 * @param sensorWidth mm
 * @param circle diameter of the circle of confusion that still counts as sharp, pixels
 * @param overlap share of the depth of field by which neighbouring frames overlap
 */
public record Rig(Lens lens, double magnification, double sensorWidth, double circle, double overlap) {
    /** 100 mm at f/4, life size, steps of 0.7 depths of field for a circle of 1.4 px: the circle grows 2 px a frame. */
    public static final Rig USUAL = new Rig(new Lens(100, 4), 1, 24, 1.4, 0.3);

    /** The sweep for frames of this width in pixels. */
    public Sweep sweep(int width) {
        double pitch = sensorWidth / width;
        double step = (1 - overlap) * lens.depthOfFocus(magnification, circle * pitch);
        return new Sweep(lens, lens.focalLength() * (1 + magnification), step, pitch);
    }

    /** The same with other steps: the circle of confusion counted as sharp, in pixels. */
    public Rig withCircle(double pixels) {
        return new Rig(lens, magnification, sensorWidth, pixels, overlap);
    }
}
