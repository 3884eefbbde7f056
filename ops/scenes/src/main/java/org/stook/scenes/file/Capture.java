package org.stook.scenes.file;

import java.time.OffsetDateTime;
import org.stook.scenes.optics.Lens;

/**
 * What Exif tells about one frame.
 *
 * @param camera the camera
 * @param lens the lens
 * @param taken when, kept to the millisecond, with its offset from UTC
 */
public record Capture(Camera camera, Lens lens, OffsetDateTime taken) {}
