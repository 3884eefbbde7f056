package org.stook.trail.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Time stamps beside the heads: a folder {@value #NAME} with a token (DER) for each head that was stamped, by its number of entries. */
public final class StampFiles {
    public static final String NAME = "stamps";
    private static final String END = ".tst";

    private final Path folder;

    /** @param heads folder of the heads */
    public StampFiles(Path heads) {
        folder = heads.resolve(NAME);
    }

    /** Of the heads that are stamped, the numbers of entries under them. */
    public TreeSet<Long> sizes() throws IOException {
        TreeSet<Long> sizes = new TreeSet<>();
        if (!Files.isDirectory(folder)) return sizes;
        try (Stream<Path> files = Files.list(folder)) {
            files.map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> name.matches("[0-9]{19}\\" + END))
                    .forEach(name -> sizes.add(Long.parseLong(name.substring(0, name.length() - END.length()))));
        }
        return sizes;
    }

    public Path file(long size) {
        return folder.resolve(String.format(Locale.ROOT, "%019d%s", size, END));
    }

    /** Adds one, whole or not at all. */
    public void add(long size, byte[] token) throws IOException {
        Files.createDirectories(folder);
        Path begun = folder.resolve("begun" + END);
        Files.write(begun, token);
        Files.move(begun, file(size), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }
}
