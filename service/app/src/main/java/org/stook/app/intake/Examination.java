package org.stook.app.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.stook.imaging.codec.FrameHeader;
import org.stook.imaging.codec.FrameReader;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.UnreadableFrame;

/** Reads a settled file from beginning to end: is it a whole frame, and which bytes are it? */
final class Examination {
    private static final Logger LOG = LoggerFactory.getLogger(Examination.class);
    private static final int CHUNK = 1 << 20;

    private Examination() {}

    /** @param settled how the file looked when it was found settled */
    static Finding of(Path file, Sighting settled) {
        return of(file, settled, false);
    }

    /** The same of a camera raw file that is to be a frame by itself. */
    static Finding ofRaw(Path file, Sighting settled) {
        return of(file, settled, true);
    }

    private static Finding of(Path file, Sighting settled, boolean developed) {
        if (settled.size() == 0) {
            return new Finding.Incomplete(file.getFileName() + ": found 0 bytes, expected a frame");
        }
        try {
            FrameReader reader = FrameReaders.recognise(file);
            if (reader.isRaw() && !developed) {
                return new Finding.Raw();
            }
            FrameHeader header = reader.header(file);
            String sha256 = hash(file);
            return Sighting.of(file).equals(settled) ? new Finding.Whole(header, sha256) : new Finding.Changed();
        } catch (UnreadableFrame e) {
            return e.reason() == UnreadableFrame.Reason.INCOMPLETE
                    ? new Finding.Incomplete(e.getMessage())
                    : new Finding.Refused(e.reason().name(), e.getMessage());
        } catch (IOException e) {
            return new Finding.Incomplete(file.getFileName() + ": cannot be read (" + e + ")");
        } catch (RuntimeException e) {
            // A reader's fault must not hold up the rest of the stack.
            LOG.error("reading the header of {} failed", file, e);
            return new Finding.Refused(
                    "READER_FAILED", file.getFileName() + ": its reader failed on it (" + e + "); the log has more");
        }
    }

    /** The hash of all bytes, empty if the file changed meanwhile or cannot be read now. */
    static Optional<String> hash(Path file, Sighting settled) {
        try {
            String sha256 = hash(file);
            return Sighting.of(file).equals(settled) ? Optional.of(sha256) : Optional.empty();
        } catch (IOException e) {
            LOG.debug("{} cannot be read yet", file, e);
            return Optional.empty();
        }
    }

    private static String hash(Path file) throws IOException {
        MessageDigest digest = sha256();
        byte[] chunk = new byte[CHUNK];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(chunk); n >= 0; n = in.read(chunk)) digest.update(chunk, 0, n);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
