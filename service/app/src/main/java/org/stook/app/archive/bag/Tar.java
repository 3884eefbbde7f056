package org.stook.app.archive.bag;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;

/**
 * A tar file (POSIX.1-2001 pax) that exists as a plan only: where each header, file and padding lies. Any part of it can be
 * written at any time, always the same bytes, with one small buffer in memory. The headers are the library's.
 */
public final class Tar {
    /** One file of it. */
    record Entry(String path, Content content) {}

    private static final int BLOCK = 512;
    private static final int BUFFER = 1 << 16;

    /** A stretch of the file: a header, then content, then padding to the next block. */
    private record Piece(long start, byte[] header, Entry entry) {
        long end() {
            return contentEnd() + padding();
        }

        long contentStart() {
            return start + header.length;
        }

        long contentEnd() {
            return contentStart() + entry.content().length();
        }

        int padding() {
            return (int) (-entry.content().length() & (BLOCK - 1));
        }
    }

    private final List<Piece> pieces;
    private final long length;
    private final String etag;

    private Tar(List<Piece> pieces, long length, String etag) {
        this.pieces = pieces;
        this.length = length;
        this.etag = etag;
    }

    /** @param time that every entry carries, for the wall clock would make it another file each time */
    static Tar of(List<Entry> entries, Instant time) {
        MessageDigest all = Digests.digest("SHA-256");
        List<Piece> pieces = new ArrayList<>(entries.size());
        long at = 0;
        for (Entry entry : entries) {
            Piece piece = new Piece(at, header(entry, time), entry);
            all.update(piece.header());
            all.update(entry.content().sha512().getBytes(StandardCharsets.US_ASCII));
            pieces.add(piece);
            at = piece.end();
        }
        return new Tar(pieces, at + 2 * BLOCK, '"' + HexFormat.of().formatHex(all.digest()) + '"');
    }

    private static byte[] header(Entry entry, Instant time) {
        TarArchiveEntry header = new TarArchiveEntry(entry.path());
        header.setSize(entry.content().length());
        header.setModTime(time.getEpochSecond() * 1000);
        header.setMode(0644);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(BLOCK);
        try {
            // Not closed: it would miss the content, which comes from elsewhere.
            @SuppressWarnings("resource")
            TarArchiveOutputStream out = new TarArchiveOutputStream(bytes, "UTF-8");
            out.setLongFileMode(TarArchiveOutputStream.LONGFILE_POSIX);
            out.setBigNumberMode(TarArchiveOutputStream.BIGNUMBER_POSIX);
            out.putArchiveEntry(header);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    public long length() {
        return length;
    }

    /** Strong: the same tag, the same bytes. */
    public String etag() {
        return etag;
    }

    /**
     * Writes bytes {@code from} to {@code to - 1}. A file that is written from its first byte to its last is compared with its hash.
     *
     * @throws IOException if the receiver is gone, or if a file is not what it was when the bag was laid out; then nothing more is
     *     written, so that the receiver sees that the bag is not whole
     */
    public void write(OutputStream out, long from, long to) throws IOException {
        long at = from;
        for (int i = indexOf(from); i < pieces.size() && at < to; i++) {
            Piece piece = pieces.get(i);
            at = bytes(out, piece.header(), piece.start(), at, to);
            if (at >= piece.contentStart() && at < piece.contentEnd() && at < to) {
                long end = Math.min(to, piece.contentEnd());
                content(out, piece, at - piece.contentStart(), end - at);
                at = end;
            }
            at = bytes(out, new byte[piece.padding()], piece.contentEnd(), at, to);
        }
        bytes(out, new byte[2 * BLOCK], length - 2 * BLOCK, at, to);
    }

    /** Of the piece that holds a byte; the number of pieces if it lies in the end mark. */
    private int indexOf(long at) {
        int low = 0;
        int high = pieces.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (pieces.get(middle).end() <= at) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Writes what of {@code bytes}, which begin at {@code start}, lies in the range. @return where to go on */
    private static long bytes(OutputStream out, byte[] bytes, long start, long at, long to) throws IOException {
        long end = Math.min(to, start + bytes.length);
        if (at < start || at >= end) return at;
        out.write(bytes, (int) (at - start), (int) (end - at));
        return end;
    }

    private static void content(OutputStream out, Piece piece, long offset, long count) throws IOException {
        Content content = piece.entry().content();
        boolean whole = offset == 0 && count == content.length();
        MessageDigest digest = Digests.digest("SHA-512");
        byte[] buffer = new byte[BUFFER];
        try (InputStream in = content.from(offset)) {
            for (long left = count; left > 0; ) {
                int n = in.read(buffer, 0, (int) Math.min(BUFFER, left));
                if (n < 0) throw new IOException(piece.entry().path() + " ended early");
                if (whole) digest.update(buffer, 0, n);
                out.write(buffer, 0, n);
                left -= n;
            }
        }
        if (whole && !HexFormat.of().formatHex(digest.digest()).equals(content.sha512())) {
            throw new IOException(piece.entry().path() + " is not what it was when the bag was laid out");
        }
    }
}
