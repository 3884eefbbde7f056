package org.stook.drills.stage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** A worker's wall clock put off, by a few lines of C before its system library. Needs a C compiler named cc. */
public final class Skew {
    private static final String SECONDS = "STOOK_DRILL_SKEW";

    private Skew() {}

    /** What {@link Slot.Setup} is to have in its environment. */
    public static Map<String, String> by(int seconds) {
        return Map.of(SECONDS, Integer.toString(seconds));
    }

    /** The variables of a process, with the library named that puts its clock off if it is to be off. */
    static Map<String, String> environment(Map<String, String> wanted, Path folder)
            throws IOException, InterruptedException {
        return wanted.containsKey(SECONDS)
                ? Map.of(
                        SECONDS,
                        wanted.get(SECONDS),
                        "LD_PRELOAD",
                        library(folder).toString())
                : wanted;
    }

    private static Path library(Path folder) throws IOException, InterruptedException {
        Path library = folder.resolve("skew.so");
        if (!Files.exists(library)) {
            Path source = folder.resolve("skew.c");
            try (InputStream in = Objects.requireNonNull(Skew.class.getResourceAsStream("skew.c"))) {
                Files.copy(in, source);
            }
            Processes.must(List.of("cc", "-shared", "-fPIC", "-o", library.toString(), source.toString()));
        }
        return library;
    }
}
