package org.stook.trail.check;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The files of an unpacked bag and whether they are what its manifests say (RFC 8493, section 3). */
final class BagFiles {
    private static final List<String> ALGORITHMS = List.of("SHA-512", "SHA-256");

    private final Path bag;
    private final Findings findings;
    private final Set<String> toFetch = new TreeSet<>();

    /** @throws IOException if the folder is no bag */
    BagFiles(Path bag, Findings findings) throws IOException {
        this.bag = bag;
        this.findings = findings;
        if (!Files.isRegularFile(bag.resolve("bagit.txt"))) {
            throw new IOException(bag + ": found no bagit.txt, expected an unpacked bag (tar -xf unpacks one)");
        }
        if (Files.exists(bag.resolve("fetch.txt"))) {
            for (String line : Files.readAllLines(bag.resolve("fetch.txt"))) {
                String[] parts = line.split("\\s+", 3);
                if (parts.length == 3) toFetch.add(parts[2]);
            }
        }
    }

    void check() throws IOException {
        Set<String> listed = manifests("manifest-");
        manifests("tagmanifest-");
        Set<String> unlisted = new TreeSet<>();
        for (Path file : payload()) {
            if (!listed.contains(name(file))) unlisted.add(name(file));
        }
        unlisted.forEach(name -> findings.bad(name + ": in the bag, but in no manifest"));
    }

    List<Path> payload() throws IOException {
        try (Stream<Path> files = Files.walk(bag.resolve("data"))) {
            return files.filter(Files::isRegularFile).sorted().toList();
        }
    }

    String name(Path file) {
        return bag.relativize(file).toString().replace('\\', '/');
    }

    private Set<String> manifests(String prefix) throws IOException {
        Set<String> listed = new TreeSet<>();
        for (String algorithm : ALGORITHMS) {
            Path manifest =
                    bag.resolve(prefix + algorithm.toLowerCase(Locale.ROOT).replace("-", "") + ".txt");
            if (Files.exists(manifest)) listed.addAll(check(manifest, algorithm));
        }
        if (listed.isEmpty() && prefix.equals("manifest-")) {
            findings.bad("the bag has no manifest of SHA-512 or SHA-256: none of its files is checked");
        }
        return listed;
    }

    private List<String> check(Path manifest, String algorithm) throws IOException {
        List<String> names = new ArrayList<>();
        int good = 0;
        int absent = 0;
        for (String line : Files.readAllLines(manifest)) {
            String[] parts = line.split("\\s+", 2);
            if (parts.length < 2) continue;
            String name = parts[1];
            names.add(name);
            Path file = bag.resolve(name).normalize();
            if (!file.startsWith(bag.normalize())) {
                findings.bad(name + ": leads out of the bag");
            } else if (!Files.isRegularFile(file)) {
                if (toFetch.contains(name)) absent++;
                else findings.bad(name + ": in the manifest, but not in the bag");
            } else if (Digest.of(file, algorithm).equalsIgnoreCase(parts[0])) {
                good++;
            } else {
                findings.bad(name + ": not what " + manifest.getFileName() + " says (damaged or changed)");
            }
        }
        findings.proven("%d files have the hashes of %s".formatted(good, manifest.getFileName()));
        if (absent > 0) findings.unproven(absent + " files of fetch.txt are not fetched yet");
        return names;
    }
}
