package org.stook.trail.command;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import org.jspecify.annotations.Nullable;
import org.stook.trail.PublicHeadKey;
import org.stook.trail.check.Findings;
import org.stook.trail.check.KnownHeads;
import org.stook.trail.check.StampCheck;
import org.stook.trail.file.StampFiles;
import picocli.CommandLine.Option;

/** What the checker holds. */
final class HeadOptions {
    @Option(
            names = "--heads",
            paramLabel = "FILE",
            description = "heads.jsonl from a place that whoever may have changed the trail could not reach")
    @Nullable
    Path heads;

    @Option(names = "--key", paramLabel = "FILE", description = "the studio's public key (key.pem), got by another way")
    @Nullable
    Path key;

    @Option(
            names = "--authority",
            paramLabel = "FILE",
            description = "certificate (PEM) of the time stamp authority or of the one above it, got by another way")
    @Nullable
    Path authority;

    /** The stamps beside the heads. */
    void checkStamps(KnownHeads known, Findings findings) throws IOException {
        Path folder = heads == null ? null : heads.toAbsolutePath().getParent();
        if (folder == null) return;
        X509Certificate trusted = authority == null ? null : certificate(authority);
        new StampCheck(known, trusted, findings).run(new StampFiles(folder));
    }

    private static X509Certificate certificate(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return (X509Certificate) CertificateFactory.getInstance("X.509").generateCertificate(in);
        } catch (CertificateException e) {
            throw new IOException(file + ": found no certificate (" + e.getMessage() + "), expected X.509 in PEM", e);
        }
    }

    @Nullable
    KnownHeads read() throws IOException {
        return heads == null ? null : KnownHeads.read(heads, key == null ? null : PublicHeadKey.read(key));
    }
}
