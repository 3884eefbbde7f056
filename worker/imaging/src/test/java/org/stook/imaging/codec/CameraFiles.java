package org.stook.imaging.codec;

import java.time.OffsetDateTime;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.file.FrameWriter;
import org.stook.scenes.optics.Lens;

/** Files as the cameras of the generated scenes write them, Exif and all. */
final class CameraFiles {
    static final Camera CAMERA = Camera.USUAL;
    static final Lens LENS = new Lens(100, 5.6);

    private CameraFiles() {}

    static byte[] jpeg(OffsetDateTime taken) {
        return FrameWriter.bytes(
                Picture.black(24, 16), FrameFormat.JPEG, new org.stook.scenes.file.Capture(CAMERA, LENS, taken));
    }
}
