package org.stook.app.intake;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.codec.Capture;
import org.stook.imaging.codec.CaptureTime;

/**
 * How a frame was taken, in the words by which frames are compared.
 *
 * @param time by the camera's clock, set right by the station's settings
 * @param camera maker, model and serial number; empty if the file does not say
 * @param exposure time, f-number, sensitivity and focal length; empty likewise
 */
record CaptureFacts(@Nullable LocalDateTime time, String camera, String exposure) {
    /** @param clocks what is added to a camera's time, by serial number or model */
    static CaptureFacts of(Capture capture, Map<String, Duration> clocks) {
        Capture.Camera camera = capture.camera();
        String body = Stream.of(camera.make(), camera.model(), camera.serial())
                .flatMap(java.util.Optional::stream)
                .collect(Collectors.joining(" "));
        String exposure = Stream.of(
                        capture.exposureSeconds().map(s -> words("%.5f s", s)),
                        capture.fNumber().map(n -> words("f/%.1f", n)),
                        capture.iso().map(i -> "ISO " + i),
                        capture.focalLength().map(f -> words("%.0f mm", f)))
                .flatMap(java.util.Optional::stream)
                .collect(Collectors.joining(" "));
        Duration late = camera.serial()
                .or(camera::model)
                .map(clock -> clocks.getOrDefault(clock, Duration.ZERO))
                .orElse(Duration.ZERO);
        return new CaptureFacts(
                capture.time()
                        .map(CaptureTime::local)
                        .map(time -> time.plus(late))
                        .orElse(null),
                body,
                exposure);
    }

    private static String words(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
