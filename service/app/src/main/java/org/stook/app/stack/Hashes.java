package org.stook.app.stack;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/** SHA-256 (FIPS 180-4) of what names stacks and settings, in lower-case hexadecimal. */
final class Hashes {
    private Hashes() {}

    /** Names exactly these frames in this order: the hash of one line each, "ordinal sha256". */
    static String manifest(List<Candidate> sweep) {
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < sweep.size(); i++)
            lines.append(i).append(' ').append(sweep.get(i).sha256()).append('\n');
        return of(lines.toString());
    }

    static String of(String text) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
