package org.stook.scenes.optics;

/**
 * A sweep of focus in equal steps of the image distance, near to far. A sweep position is counted in frames: position 2.5
 * is what would be sharp half way between the third and the fourth frame.
 *
 * @param lens the lens
 * @param firstImageDistance lens to sensor at frame 0, mm
 * @param step by which the image distance shrinks from frame to frame, mm
 * @param pixelPitch size of a pixel on the sensor, mm
 */
public record Sweep(Lens lens, double firstImageDistance, double step, double pixelPitch) {

    /** Radius of the circle of confusion, in pixels, of what lies at {@code position} as seen by frame {@code frame}. */
    public double blurRadius(double position, double frame) {
        return lens.blurBehind(imageDistance(frame), imageDistance(position)) / (2 * pixelPitch);
    }

    /** Distance before the lens, in mm, of a sweep position. */
    public double objectDistance(double position) {
        return lens.objectDistance(imageDistance(position));
    }

    /** Whether the lens can be focused there at all: a position past infinity has nothing to be sharp. */
    public boolean reaches(double position) {
        return imageDistance(position) > 1.001 * lens.focalLength();
    }

    private double imageDistance(double position) {
        return firstImageDistance - position * step;
    }
}
