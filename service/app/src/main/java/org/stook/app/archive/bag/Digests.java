package org.stook.app.archive.bag;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collection;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The SHA-512 of files whose SHA-256 is on record: measured once, and each time the old hash is compared too. */
@Component
class Digests {
    private static final int BUFFER = 1 << 16;

    private final JdbcClient jdbc;

    Digests(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of those that are known, by SHA-256. */
    Map<String, String> known(Collection<String> sha256) {
        Map<String, String> known = new HashMap<>();
        jdbc.sql("select sha256, sha512 from stook.content_digest where sha256 = any(:all)")
                .param("all", sha256.toArray(String[]::new))
                .query((row, n) -> known.put(row.getString(1), row.getString(2)))
                .list();
        return known;
    }

    /**
     * Reads the file and notes its hash.
     *
     * @throws NotWhole if it is not there, cannot be read, or is not what was published
     */
    String measure(Path file, String sha256) throws NotWhole {
        MessageDigest old = digest("SHA-256");
        MessageDigest strong = digest("SHA-512");
        long bytes = 0;
        try (InputStream in = Files.newInputStream(file)) {
            byte[] buffer = new byte[BUFFER];
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                old.update(buffer, 0, n);
                strong.update(buffer, 0, n);
                bytes += n;
            }
        } catch (IOException e) {
            throw new NotWhole(file + " cannot be read (" + e + "), so no bag can be made with it");
        }
        String found = HexFormat.of().formatHex(old.digest());
        if (!found.equals(sha256)) {
            throw new NotWhole("%s is damaged: its SHA-256 is %s, expected %s; no bag is made with it"
                    .formatted(file, found, sha256));
        }
        String sha512 = HexFormat.of().formatHex(strong.digest());
        jdbc.sql("insert into stook.content_digest (sha256, bytes, sha512) values (?, ?, ?) on conflict do nothing")
                .params(sha256, bytes, sha512)
                .update();
        return sha512;
    }

    static String sha512(byte[] bytes) {
        return HexFormat.of().formatHex(digest("SHA-512").digest(bytes));
    }

    static MessageDigest digest(String algorithm) {
        try {
            return MessageDigest.getInstance(algorithm);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has " + algorithm, e);
        }
    }
}
