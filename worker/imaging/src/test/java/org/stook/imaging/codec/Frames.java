package org.stook.imaging.codec;

import java.nio.file.Path;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Samples;

/** Short ways for the tests of this package. */
final class Frames {
    private Frames() {}

    /** Code values divided by white. */
    static Frame of(Samples samples) {
        Frame frame = Frame.blank(samples.width(), samples.height(), samples.channels());
        for (int c = 0; c < samples.channels(); c++) {
            for (int y = 0; y < samples.height(); y++) {
                for (int x = 0; x < samples.width(); x++) {
                    frame.plane(c).set(x, y, samples.code(x, y, c) / (float) samples.maxCode());
                }
            }
        }
        return frame;
    }

    static void touch(FrameReader reader, Path file, boolean headerOnly) throws Exception {
        if (headerOnly) reader.header(file);
        else reader.read(file);
    }
}
