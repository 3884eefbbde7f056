package org.stook.app.people;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Locale;

/**
 * A secret that lets somebody in once: 100 random bits as five groups of four characters of an alphabet without 0, 1, I
 * and O, which are taken for each other when a code is read out or copied by hand.
 */
final class OneTimeCode {
    private static final String ALPHABET = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
    private static final int LENGTH = 20;
    private static final int GROUP = 4;
    private static final SecureRandom RANDOM = new SecureRandom();

    private OneTimeCode() {}

    static String fresh() {
        StringBuilder code = new StringBuilder();
        for (int i = 0; i < LENGTH; i++) {
            if (i > 0 && i % GROUP == 0) {
                code.append('-');
            }
            code.append(ALPHABET.charAt(RANDOM.nextInt(ALPHABET.length())));
        }
        return code.toString();
    }

    /** SHA-256 of what was typed, whatever its case, blanks and hyphens. A code is random enough to need no slower hash. */
    static String sha256(String typed) {
        String bare = typed.replaceAll("[\\s-]", "").toUpperCase(Locale.ROOT);
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(bare.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    static boolean matches(String typed, String sha256) {
        return MessageDigest.isEqual(
                sha256(typed).getBytes(StandardCharsets.US_ASCII), sha256.getBytes(StandardCharsets.US_ASCII));
    }
}
