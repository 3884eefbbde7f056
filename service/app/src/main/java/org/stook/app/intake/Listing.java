package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** What lies in a folder, without what is hidden or named as unfinished. */
final class Listing {
    private static final List<String> UNFINISHED = List.of(".part", ".tmp", ".crdownload");

    private Listing() {}

    static List<Path> folders(Path root) throws IOException {
        return list(root, p -> Files.isDirectory(p, LinkOption.NOFOLLOW_LINKS));
    }

    static List<Path> files(Path folder) throws IOException {
        return list(folder, p -> Files.isRegularFile(p, LinkOption.NOFOLLOW_LINKS));
    }

    private static List<Path> list(Path folder, Predicate<Path> wanted) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(p -> !ignored(String.valueOf(p.getFileName())))
                    .filter(wanted)
                    .sorted()
                    .toList();
        }
    }

    /** Names that a program gives to what it has not finished, or wants nobody to see. */
    static boolean ignored(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return name.startsWith(".")
                || name.startsWith("~")
                || UNFINISHED.stream().anyMatch(lower::endsWith);
    }
}
