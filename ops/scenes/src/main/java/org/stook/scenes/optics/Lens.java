package org.stook.scenes.optics;

/**
 * A thin lens. Formulas: Sidney F. Ray, "Applied Photographic Optics", 3rd edition, Focal Press 2002, chapters on
 * image formation and depth of field (formulas from memory).
 *
 * @param focalLength in mm
 * @param fNumber marked f-number
 */
public record Lens(double focalLength, double fNumber) {
    public Lens {
        if (!(focalLength > 0) || !(fNumber > 0)) {
            throw new IllegalArgumentException(
                    "focal length and f-number must be positive, got " + focalLength + " and " + fNumber);
        }
    }

    /** Distance behind the lens, in mm, of the image of an object {@code distance} mm before it. */
    public double imageDistance(double distance) {
        return focalLength * distance / (distance - focalLength);
    }

    /** Distance before the lens, in mm, of what is sharp {@code imageDistance} mm behind it. */
    public double objectDistance(double imageDistance) {
        return focalLength * imageDistance / (imageDistance - focalLength);
    }

    /** Diameter of the circle of confusion in mm when focused at one distance and looking at another, both in mm. */
    public double blurDiameter(double focusDistance, double objectDistance) {
        return blurBehind(imageDistance(focusDistance), imageDistance(objectDistance));
    }

    /** The same from the side of the image: sensor and sharp image at these distances behind the lens, in mm. */
    public double blurBehind(double sensorDistance, double sharpDistance) {
        return focalLength / fNumber * Math.abs(sensorDistance - sharpDistance) / sharpDistance;
    }

    /** Total depth of field in mm of a symmetric lens, 2 N c (m + 1) / m^2. */
    public double depthOfField(double magnification, double circle) {
        return 2 * fNumber * circle * (magnification + 1) / (magnification * magnification);
    }

    /** Total depth of focus in mm at the sensor, 2 N c (m + 1). */
    public double depthOfFocus(double magnification, double circle) {
        return 2 * fNumber * circle * (magnification + 1);
    }
}
