package org.stook.trail.file;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stook.trail.Head;
import org.stook.trail.PublicHeadKey;
import org.stook.trail.SealedLeaf;
import org.stook.trail.merkle.Hash;

/**
 * A folder that the trail leaves its mark in: {@value #HEADS}, a head a line; {@value #LEAVES}, for each entry its number and
 * hash in the order of the tree, lines of one width; {@value #KEY}, the public key of the signatures. Both lists only grow.
 * A line that a crash cut short is written anew.
 */
public final class HeadFolder {
    /** Usual name of the folder. */
    public static final String NAME = "stook-audit";

    public static final String HEADS = "heads.jsonl";
    public static final String LEAVES = "leaves.txt";
    public static final String KEY = "key.pem";

    private static final int ID_DIGITS = 19;
    private static final int LINE = ID_DIGITS + 1 + 2 * Hash.BYTES + 1;
    private static final int BUFFERED_LINES = 4096;
    /** Longer than any head. */
    private static final int TAIL = 8192;

    private final Path folder;

    public HeadFolder(Path folder) {
        this.folder = folder;
    }

    public Path heads() {
        return folder.resolve(HEADS);
    }

    public Path leaves() {
        return folder.resolve(LEAVES);
    }

    /** The newest head; empty if there is none yet. */
    public Optional<Head> lastHead() throws IOException {
        if (!Files.exists(heads())) {
            return Optional.empty();
        }
        try (FileChannel file = FileChannel.open(heads(), StandardOpenOption.READ)) {
            long from = Math.max(0, file.size() - TAIL);
            ByteBuffer bytes = ByteBuffer.allocate((int) (file.size() - from));
            readFully(file, bytes, from);
            String tail = new String(bytes.array(), UTF_8);
            int end = tail.lastIndexOf('\n');
            return end < 0
                    ? Optional.empty()
                    : Optional.of(Head.parse(tail.substring(tail.lastIndexOf('\n', end - 1) + 1, end)));
        }
    }

    /** How many leaves are written in full. */
    public long leafCount() throws IOException {
        return Files.exists(leaves()) ? Files.size(leaves()) / LINE : 0;
    }

    /** The leaf at the position, which is below {@link #leafCount()}. */
    public SealedLeaf leaf(long position) throws IOException {
        try (FileChannel file = FileChannel.open(leaves(), StandardOpenOption.READ)) {
            ByteBuffer line = ByteBuffer.allocate(LINE);
            readFully(file, line, position * LINE);
            return leaf(new String(line.array(), US_ASCII).stripTrailing());
        }
    }

    /** Adds leaves and forces them to the disk. They go before the heads over them. */
    public void addLeaves(Iterator<SealedLeaf> more) throws IOException {
        Files.createDirectories(folder);
        try (FileChannel file = FileChannel.open(leaves(), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            file.truncate(file.size() - file.size() % LINE);
            file.position(file.size());
            StringBuilder text = new StringBuilder();
            while (more.hasNext()) {
                text.append(line(more.next()));
                if (text.length() >= BUFFERED_LINES * LINE || !more.hasNext()) {
                    write(file, text.toString());
                    text.setLength(0);
                }
            }
            file.force(true);
        }
    }

    /** Adds heads and forces them to the disk. */
    public void addHeads(List<Head> more) throws IOException {
        Files.createDirectories(folder);
        boolean cut = Files.exists(heads()) && Files.size(heads()) > 0 && !endsWithLine(heads());
        try (FileChannel file = FileChannel.open(heads(), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            if (cut) {
                file.truncate(startOfLastLine());
            }
            file.position(file.size());
            StringBuilder text = new StringBuilder();
            more.forEach(head -> text.append(head.toJson()).append('\n'));
            write(file, text.toString());
            file.force(true);
        }
    }

    /** Lays the public key beside the heads. An earlier key stays: heads signed with it are still to be checked. */
    public void addKey(PublicHeadKey key) throws IOException {
        Path file = folder.resolve(KEY);
        String known = Files.exists(file) ? Files.readString(file) : "";
        if (!known.contains(key.pem())) {
            Files.createDirectories(folder);
            Files.writeString(file, known + key.pem());
        }
    }

    private static boolean endsWithLine(Path path) throws IOException {
        try (FileChannel file = FileChannel.open(path, StandardOpenOption.READ)) {
            ByteBuffer last = ByteBuffer.allocate(1);
            file.read(last, file.size() - 1);
            return last.get(0) == '\n';
        }
    }

    private long startOfLastLine() throws IOException {
        byte[] all = Files.readAllBytes(heads());
        int at = all.length;
        while (at > 0 && all[at - 1] != '\n') {
            at--;
        }
        return at;
    }

    private static void readFully(FileChannel file, ByteBuffer into, long from) throws IOException {
        int read = 0;
        while (into.hasRemaining() && read >= 0) {
            read = file.read(into, from + into.position());
        }
    }

    private static void write(FileChannel file, String text) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(UTF_8));
        while (bytes.hasRemaining()) {
            file.write(bytes);
        }
    }

    private static String line(SealedLeaf leaf) {
        String id = Long.toString(leaf.entryId());
        return "0".repeat(ID_DIGITS - id.length()) + id + " " + leaf.hash().hex() + "\n";
    }

    private static SealedLeaf leaf(String line) {
        return new SealedLeaf(Long.parseLong(line.substring(0, ID_DIGITS)), Hash.ofHex(line.substring(ID_DIGITS + 1)));
    }

    /**
     * All heads of a file, oldest first; a last line without an end is left out.
     *
     * @throws IOException names the line that is no head
     */
    public static List<Head> readHeads(Path file) throws IOException {
        List<Head> heads = new ArrayList<>();
        try (BufferedReader lines = Files.newBufferedReader(file)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                try {
                    if (!line.isBlank()) heads.add(Head.parse(line));
                } catch (IllegalArgumentException e) {
                    if (lines.readLine() == null && !endsWithLine(file)) break;
                    throw new IOException(file + ", line " + (heads.size() + 1) + ": " + e.getMessage(), e);
                }
            }
        }
        return heads;
    }

    /** Leaves of a file, one after the other. */
    public static Leaves readLeaves(Path file) throws IOException {
        return new Leaves(Files.newBufferedReader(file, US_ASCII), file);
    }

    /** An open file of leaves. */
    public static final class Leaves implements AutoCloseable {
        private final BufferedReader lines;
        private final Path file;
        private long read;

        private Leaves(BufferedReader lines, Path file) {
            this.lines = lines;
            this.file = file;
        }

        /** The next leaf, or null at the end. */
        public @Nullable SealedLeaf next() throws IOException {
            String line = lines.readLine();
            if (line == null || line.length() < LINE - 1) {
                return null;
            }
            read++;
            try {
                return leaf(line);
            } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
                throw new IOException(file + ", line " + read + ": found '" + line + "', expected number and hash", e);
            }
        }

        @Override
        public void close() throws IOException {
            lines.close();
        }
    }
}
