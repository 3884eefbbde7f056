package org.stook.trail.check;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stook.trail.Entry;
import org.stook.trail.Head;
import org.stook.trail.Proof;
import org.stook.trail.Proof.Proven;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Checks an unpacked bag: its files against its manifests, the audit entries in its proofs against a head, the published files
 * against the entries, the frames against the record. Needs nothing but the bag and the heads.
 */
public final class BagCheck {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String MADE = "publication.MADE";

    private final Path bag;
    private final @Nullable KnownHeads heads;
    private final Findings findings;

    /** @param heads null: the bag is only held against itself */
    public BagCheck(Path bag, @Nullable KnownHeads heads, Findings findings) {
        this.bag = bag;
        this.heads = heads;
        this.findings = findings;
    }

    /** @throws IOException if it is no bag, or cannot be read */
    public void run() throws IOException {
        BagFiles files = new BagFiles(bag, findings);
        files.check();
        List<Path> proofs = files.payload().stream()
                .filter(file -> String.valueOf(file.getFileName()).equals(Proof.FILE))
                .toList();
        if (proofs.isEmpty()) {
            findings.unproven("the bag holds no " + Proof.FILE + ": nothing ties it to the audit trail");
        }
        for (Path proof : proofs) {
            try {
                check(files, proof, Proof.parse(Files.readString(proof)));
            } catch (IllegalArgumentException e) {
                findings.bad(files.name(proof) + ": " + e.getMessage());
            }
        }
    }

    private void check(BagFiles files, Path file, Proof proof) throws IOException {
        String name = files.name(file);
        checkHead(name, proof.head());
        int good = 0;
        for (Proven proven : proof.entries()) {
            if (proof.holds(proven)) {
                good++;
            } else {
                findings.bad("%s: %s is not under the head over %d entries (changed, or never in the trail)"
                        .formatted(name, named(proven), proof.head().size()));
            }
        }
        findings.proven("%s: %d audit entries are under the head over %d entries of %s"
                .formatted(name, good, proof.head().size(), proof.head().at()));
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null) checkFiles(name, hashes(folder), proof);
    }

    private static String named(Proven proven) {
        Entry entry = proven.entry();
        return "entry %d (%s %s)".formatted(entry.id(), entry.kind(), entry.subject());
    }

    private void checkHead(String name, Head head) {
        if (heads == null) {
            findings.unproven(name + ": no heads were given, so the proof's own head is taken on trust");
            return;
        }
        if (heads.key() != null && !head.signedBy(heads.key())) {
            findings.bad(
                    name + ": its head is not signed by the key " + heads.key().fingerprint());
        }
        Optional<Head> known = heads.ofSize(head.size());
        if (known.isEmpty()) {
            findings.unproven("%s: its head over %d entries is not among the %d given; get a head file that reaches %s"
                    .formatted(name, head.size(), heads.count(), head.at()));
        } else if (known.get().root().equals(head.root())) {
            findings.proven("%s: its head is the one you hold, of %s"
                    .formatted(name, known.get().at()));
        } else {
            findings.bad("%s: its head over %d entries is another than the one you hold: two trails"
                    .formatted(name, head.size()));
        }
    }

    /** SHA-256 to name, of all files below the folder of a publication. */
    private Map<String, String> hashes(Path folder) throws IOException {
        Map<String, String> hashes = new TreeMap<>();
        for (Path file : new BagFiles(bag, new Findings()).payload()) {
            if (file.toAbsolutePath().startsWith(folder)) {
                hashes.put(
                        Digest.of(file, "SHA-256"),
                        folder.relativize(file.toAbsolutePath()).toString());
            }
        }
        return hashes;
    }

    private void checkFiles(String name, Map<String, String> there, Proof proof) throws IOException {
        Optional<Entry> made = proof.entries().stream()
                .map(Proven::entry)
                .filter(e -> e.kind().equals(MADE))
                .findFirst();
        if (made.isEmpty()) {
            findings.unproven(
                    name + ": no entry names the published files, so their hashes rest on the manifest alone");
            return;
        }
        JsonNode body = JSON.readTree(made.get().body());
        Map<String, String> published = new HashMap<>();
        published.put(body.path("sha256").asString(""), "master");
        for (JsonNode file : body.path("files")) {
            published.put(file.path("sha256").asString(""), file.path("kind").asString("file"));
        }
        String when = "entry %d, %s".formatted(made.get().id(), made.get().at());
        published.entrySet().stream().sorted(Map.Entry.comparingByValue()).forEach(file -> {
            String found = there.get(file.getKey());
            if (found != null) {
                findings.proven("%s is the %s that was published (%s)".formatted(found, file.getValue(), when));
            } else if (file.getValue().equals("master")) {
                findings.bad("%s: no file here is the master that was published (%s, SHA-256 %s)"
                        .formatted(name, when, file.getKey()));
            } else {
                findings.unproven("the %s that was published is not in the bag".formatted(file.getValue()));
            }
        });
        checkFrames(there, published, name);
    }

    private void checkFrames(Map<String, String> there, Map<String, String> published, String name) throws IOException {
        Optional<String> record = published.entrySet().stream()
                .filter(file -> file.getValue().equals("record"))
                .map(file -> there.get(file.getKey()))
                .filter(found -> found != null)
                .findFirst();
        if (record.isEmpty()) return;
        Path folder = bag.resolve(name).toAbsolutePath().resolveSibling(record.get());
        int inBag = 0;
        int elsewhere = 0;
        try {
            for (JsonNode frame : JSON.readTree(Files.readString(folder)).path("frames")) {
                if (there.containsKey(frame.path("sha256").asString(""))) inBag++;
                else elsewhere++;
            }
        } catch (JacksonException e) {
            findings.bad(record.get() + ": cannot be read as a record: " + e.getOriginalMessage());
        }
        if (inBag > 0) findings.proven(inBag + " frames in the bag are those that the record names");
        if (elsewhere > 0) {
            findings.unproven(
                    elsewhere + " files that the record names by hash are not in the bag; compare them where they lie");
        }
    }
}
