package org.stook.comparison.stack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.imaging.frame.Samples;

/** The frames of a stack as files. */
public final class FrameFiles {
    private FrameFiles() {}

    /** Pictures of a folder by name. */
    public static List<Path> in(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> f.toString().toLowerCase(Locale.ROOT).matches(".*\\.(jpe?g|tiff?|png)"))
                    .sorted()
                    .toList();
        }
    }

    /** Decodes a frame that was rendered for the bench, and so must be one. */
    public static Samples read(Path file) {
        try {
            return FrameReaders.read(file);
        } catch (UnreadableFrame | IOException e) {
            throw new IllegalStateException("a frame that was rendered for this bench cannot be read: " + file, e);
        }
    }
}
