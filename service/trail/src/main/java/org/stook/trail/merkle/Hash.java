package org.stook.trail.merkle;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;

/** A SHA-256 hash of a leaf or of an inner node; the two are told apart by a first byte (RFC 9162, section 2.1.1). */
public final class Hash {
    public static final int BYTES = 32;
    private static final HexFormat HEX = HexFormat.of();
    private static final byte LEAF = 0;
    private static final byte NODE = 1;

    private final byte[] bytes;

    private Hash(byte[] bytes) {
        this.bytes = bytes;
    }

    /** @throws IllegalArgumentException unless it is 32 bytes */
    public static Hash of(byte[] bytes) {
        if (bytes.length != BYTES) {
            throw new IllegalArgumentException("a SHA-256 hash has " + BYTES + " bytes, found " + bytes.length);
        }
        return new Hash(bytes.clone());
    }

    /** @throws IllegalArgumentException unless it is 64 hexadecimal digits */
    public static Hash ofHex(String hex) {
        return of(HEX.parseHex(hex));
    }

    /** The head of an empty tree. */
    public static Hash empty() {
        return new Hash(sha256().digest());
    }

    public static Hash leaf(byte[] content) {
        MessageDigest digest = sha256();
        digest.update(LEAF);
        return new Hash(digest.digest(content));
    }

    public static Hash node(Hash left, Hash right) {
        MessageDigest digest = sha256();
        digest.update(NODE);
        digest.update(left.bytes);
        return new Hash(digest.digest(right.bytes));
    }

    public byte[] bytes() {
        return bytes.clone();
    }

    /** 64 lower-case digits. */
    public String hex() {
        return HEX.formatHex(bytes);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Hash hash && Arrays.equals(bytes, hash.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return hex();
    }
}
