package org.stook.imaging.codec;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * When the shutter opened, by the camera's own clock (Exif DateTimeOriginal 0x9003 with SubSecTimeOriginal 0x9291 as
 * fraction of a second, and OffsetTimeOriginal 0x9011 where the camera knows it).
 */
public record CaptureTime(LocalDateTime local, Optional<ZoneOffset> offset) {}
