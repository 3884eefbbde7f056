package org.stook.trail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.MessageDigest;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import java.util.HexFormat;

/** The half of a head key that anyone may have (Ed25519, RFC 8032). */
public final class PublicHeadKey {
    static final String ALGORITHM = "Ed25519";
    private static final int FINGERPRINT_BYTES = 8;

    private final PublicKey key;

    PublicHeadKey(PublicKey key) {
        this.key = key;
    }

    /**
     * @param file PEM with a block {@code PUBLIC KEY}
     * @throws IOException if it cannot be read or holds no such key
     */
    public static PublicHeadKey read(Path file) throws IOException {
        return new PublicHeadKey(fromPem(Files.readString(file), file));
    }

    static PublicKey fromPem(String text, Path file) throws IOException {
        try {
            return KeyFactory.getInstance(ALGORITHM)
                    .generatePublic(new X509EncodedKeySpec(Pem.block(text, Pem.PUBLIC, file)));
        } catch (GeneralSecurityException e) {
            throw new IOException(file + ": found no Ed25519 public key, expected one in PEM", e);
        }
    }

    /** First eight bytes of the key's SHA-256, in hexadecimal: enough to tell keys apart, not to trust one. */
    public String fingerprint() {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(key.getEncoded());
            return HexFormat.of().formatHex(hash, 0, FINGERPRINT_BYTES);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** PEM, as {@link #read} takes it. */
    public String pem() {
        return Pem.write(Pem.PUBLIC, key.getEncoded());
    }

    boolean verifies(byte[] bytes, String signature) {
        try {
            Signature check = Signature.getInstance(ALGORITHM);
            check.initVerify(key);
            check.update(bytes);
            return check.verify(Base64.getDecoder().decode(signature));
        } catch (GeneralSecurityException | IllegalArgumentException e) {
            return false;
        }
    }
}
