package org.stook.scenes.bracket;

/**
 * How the frames of a bracket move against each other.
 *
 * @param breathing change of scale from frame to frame, 0.003 is 0.3 %
 * @param shift greatest shift to each side, pixels
 * @param turn greatest turn to each side, degrees
 */
public record Motion(double breathing, double shift, double turn) {
    /** A lens bolted to a table in a vault. */
    public static final Motion NONE = new Motion(0, 0, 0);
    /** A usual studio: 0.3 % a frame, up to 2 px and 0.03 degrees. */
    public static final Motion USUAL = new Motion(0.003, 2, 0.03);
}
