package org.stook.trail.stamp;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.cert.CertPathBuilder;
import java.security.cert.CertStore;
import java.security.cert.CollectionCertStoreParameters;
import java.security.cert.PKIXBuilderParameters;
import java.security.cert.TrustAnchor;
import java.security.cert.X509CertSelector;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampToken;
import org.stook.trail.Head;

/** A token of an authority (RFC 3161, section 2.4.2). What is stamped is the head's line of JSON, as it stands in the list of heads. */
public final class TimeStamp {
    private final TimeStampToken token;

    private TimeStamp(TimeStampToken token) {
        this.token = token;
    }

    /** @throws IOException if these bytes are no token */
    public static TimeStamp read(byte[] der) throws IOException {
        try {
            return new TimeStamp(new TimeStampToken(new CMSSignedData(der)));
        } catch (CMSException | TSPException e) {
            throw new IOException("found no time stamp token (" + e.getMessage() + "), expected one of RFC 3161", e);
        }
    }

    static byte[] imprint(Head head) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(head.toJson().getBytes(UTF_8));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** By the authority's clock. */
    public Instant at() {
        return token.getTimeStampInfo().getGenTime().toInstant();
    }

    /** Whether this head is what was stamped. */
    public boolean isOf(Head head) {
        return token.getTimeStampInfo().getMessageImprintAlgOID().equals(NISTObjectIdentifiers.id_sha256)
                && MessageDigest.isEqual(token.getTimeStampInfo().getMessageImprintDigest(), imprint(head));
    }

    /**
     * Who made it, if that is the holder of the trusted certificate or one for whom it vouched when the stamp was made.
     *
     * @param trusted of the authority itself or of the one above it
     * @return the signer's name, empty if the token is not theirs or was changed
     */
    public Optional<String> madeUnder(X509Certificate trusted) {
        try {
            List<X509Certificate> known = new ArrayList<>();
            JcaX509CertificateConverter converter = new JcaX509CertificateConverter();
            for (X509CertificateHolder holder : token.getCertificates().getMatches(null)) {
                known.add(converter.getCertificate(holder));
            }
            known.add(trusted);
            for (X509Certificate signer : known) {
                if (token.getSID().match(new X509CertificateHolder(signer.getEncoded()))) {
                    token.validate(new JcaSimpleSignerInfoVerifierBuilder().build(signer));
                    if (!signer.equals(trusted)) vouchedFor(signer, known, trusted);
                    return Optional.of(signer.getSubjectX500Principal().getName());
                }
            }
            return Optional.empty();
        } catch (TSPException | GeneralSecurityException | OperatorCreationException | IOException notTheirs) {
            return Optional.empty();
        }
    }

    /** A path from the trusted certificate to the signer's, as it stood at the time of the stamp (RFC 5280); revocation is not asked for. */
    private void vouchedFor(X509Certificate signer, List<X509Certificate> known, X509Certificate trusted)
            throws GeneralSecurityException {
        X509CertSelector wanted = new X509CertSelector();
        wanted.setCertificate(signer);
        PKIXBuilderParameters path = new PKIXBuilderParameters(Set.of(new TrustAnchor(trusted, null)), wanted);
        path.addCertStore(CertStore.getInstance("Collection", new CollectionCertStoreParameters(known)));
        path.setRevocationEnabled(false);
        path.setDate(token.getTimeStampInfo().getGenTime());
        CertPathBuilder.getInstance("PKIX").build(path);
    }
}
