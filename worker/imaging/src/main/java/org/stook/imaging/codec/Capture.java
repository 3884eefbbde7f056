package org.stook.imaging.codec;

import java.util.Optional;

/**
 * How the frame was taken, as far as its Exif says; whatever the file does not say is empty. Broken Exif never makes a
 * frame unreadable.
 *
 * @param exposureSeconds exposure time, s
 * @param fNumber marked f-number
 * @param iso sensitivity
 * @param focalLength focal length, mm
 */
public record Capture(
        Optional<CaptureTime> time,
        Camera camera,
        Optional<Double> exposureSeconds,
        Optional<Double> fNumber,
        Optional<Integer> iso,
        Optional<Double> focalLength) {

    /** The camera by its own words: Exif Make, Model and BodySerialNumber (0xA431). */
    public record Camera(Optional<String> make, Optional<String> model, Optional<String> serial) {}

    public static Capture unknown() {
        return new Capture(
                Optional.empty(),
                new Camera(Optional.empty(), Optional.empty(), Optional.empty()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
