package org.stook.imaging.codec.raw;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.stream.Collectors;

/** Where another Java process finds some of the classes that this one runs with. */
final class ChildClassPath {
    private ChildClassPath() {}

    /** What lies in a jar inside a jar, as in a server's single file, is put into a file of its own for as long as this process runs. */
    static String of(Class<?>... classes) {
        Set<Path> places =
                Arrays.stream(classes).map(ChildClassPath::place).collect(Collectors.toCollection(LinkedHashSet::new));
        return places.stream().map(Path::toString).collect(Collectors.joining(File.pathSeparator));
    }

    private static Path place(Class<?> of) {
        URL found = of.getProtectionDomain().getCodeSource().getLocation();
        try {
            return found.getProtocol().equals("file") ? Path.of(found.toURI()) : copied(found);
        } catch (URISyntaxException e) {
            throw new IllegalStateException("the place of " + of + " is no address: " + found, e);
        } catch (IOException e) {
            throw new UncheckedIOException("the classes for unpacking raw files cannot be copied from " + found, e);
        }
    }

    private static Path copied(URL inside) throws IOException, URISyntaxException {
        String address = inside.toString();
        String jar = address.startsWith("jar:") && address.endsWith("!/")
                ? address.substring("jar:".length(), address.length() - "!/".length())
                : address;
        Path copy = Files.createTempFile("stook-raw-", ".jar");
        copy.toFile().deleteOnExit();
        try (InputStream in = new URI(jar).toURL().openStream()) {
            Files.copy(in, copy, StandardCopyOption.REPLACE_EXISTING);
        }
        return copy;
    }
}
