package org.stook.trail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;

/** Signs heads (Ed25519, RFC 8032), so that one made elsewhere is told from one made here. */
public final class HeadKey {
    private final PrivateKey key;
    private final PublicHeadKey publicKey;

    private HeadKey(PrivateKey key, PublicHeadKey publicKey) {
        this.key = key;
        this.publicKey = publicKey;
    }

    /** The key in the file; where there is none, a new one is made, readable by its owner only. */
    public static HeadKey open(Path file) throws IOException {
        return Files.exists(file) ? read(file) : make(file);
    }

    private static HeadKey read(Path file) throws IOException {
        String text = Files.readString(file);
        try {
            PrivateKey key = KeyFactory.getInstance(PublicHeadKey.ALGORITHM)
                    .generatePrivate(new PKCS8EncodedKeySpec(Pem.block(text, Pem.PRIVATE, file)));
            return new HeadKey(key, new PublicHeadKey(PublicHeadKey.fromPem(text, file)));
        } catch (GeneralSecurityException e) {
            throw new IOException(file + ": found no Ed25519 key, expected its two halves in PEM", e);
        }
    }

    private static HeadKey make(Path file) throws IOException {
        try {
            KeyPair pair = KeyPairGenerator.getInstance(PublicHeadKey.ALGORITHM).generateKeyPair();
            PublicHeadKey publicKey = new PublicHeadKey(pair.getPublic());
            Path parent = file.toAbsolutePath().getParent();
            if (parent != null) Files.createDirectories(parent);
            Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            Files.writeString(
                    file,
                    Pem.write(Pem.PRIVATE, pair.getPrivate().getEncoded()) + publicKey.pem(),
                    StandardOpenOption.TRUNCATE_EXISTING);
            return new HeadKey(pair.getPrivate(), publicKey);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java from 15 on has Ed25519", e);
        }
    }

    public PublicHeadKey publicKey() {
        return publicKey;
    }

    byte[] sign(byte[] bytes) {
        try {
            Signature signature = Signature.getInstance(PublicHeadKey.ALGORITHM);
            signature.initSign(key);
            signature.update(bytes);
            return signature.sign();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("the head key cannot sign", e);
        }
    }
}
