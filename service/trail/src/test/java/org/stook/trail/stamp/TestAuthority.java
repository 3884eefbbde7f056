package org.stook.trail.stamp;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.math.BigInteger;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Set;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.oiw.OIWObjectIdentifiers;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.DigestCalculator;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampResponseGenerator;
import org.bouncycastle.tsp.TimeStampTokenGenerator;

/** A time stamp authority on this machine, with another above it that vouches for it. */
final class TestAuthority implements AutoCloseable {
    static final Instant NOW = Instant.parse("2026-03-02T12:00:00Z");
    private static final Instant FROM = Instant.parse("2026-01-01T00:00:00Z");
    private static final Instant TO = Instant.parse("2036-01-01T00:00:00Z");

    final X509Certificate above;
    final X509Certificate own;
    private final KeyPair keys = keys();
    private final HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);

    TestAuthority() throws Exception {
        KeyPair root = keys();
        above = certificate("CN=Harrow Root", "CN=Harrow Root", root, root, true);
        own = certificate("CN=Harrow Root", "CN=Harrow Time", keys, root, false);
        server.createContext("/", exchange -> {
            byte[] answer = answer(exchange.getRequestBody().readAllBytes());
            exchange.getResponseHeaders().set("Content-Type", "application/timestamp-reply");
            exchange.sendResponseHeaders(200, answer.length);
            exchange.getResponseBody().write(answer);
            exchange.close();
        });
        server.start();
    }

    URI address() {
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/");
    }

    private static KeyPair keys() throws Exception {
        KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
        generator.initialize(256);
        return generator.generateKeyPair();
    }

    private static X509Certificate certificate(String by, String of, KeyPair keys, KeyPair signer, boolean authority)
            throws Exception {
        JcaX509v3CertificateBuilder builder = new JcaX509v3CertificateBuilder(
                new X500Name(by),
                BigInteger.valueOf(authority ? 1 : 2),
                Date.from(FROM),
                Date.from(TO),
                new X500Name(of),
                keys.getPublic());
        builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(authority));
        if (!authority) {
            builder.addExtension(
                    Extension.extendedKeyUsage, true, new ExtendedKeyUsage(KeyPurposeId.id_kp_timeStamping));
        }
        return new JcaX509CertificateConverter()
                .getCertificate(
                        builder.build(new JcaContentSignerBuilder("SHA256withECDSA").build(signer.getPrivate())));
    }

    private byte[] answer(byte[] query) throws IOException {
        try {
            DigestCalculator digests = new JcaDigestCalculatorProviderBuilder()
                    .build()
                    .get(new AlgorithmIdentifier(OIWObjectIdentifiers.idSHA1));
            TimeStampTokenGenerator tokens = new TimeStampTokenGenerator(
                    new JcaSimpleSignerInfoGeneratorBuilder().build("SHA256withECDSA", keys.getPrivate(), own),
                    digests,
                    new ASN1ObjectIdentifier("1.3.6.1.4.1.99999.1"));
            tokens.addCertificates(new JcaCertStore(List.of(own)));
            return new TimeStampResponseGenerator(tokens, Set.of(TSPAlgorithms.SHA256.getId()))
                    .generate(new TimeStampRequest(query), BigInteger.TEN, Date.from(NOW))
                    .getEncoded();
        } catch (Exception e) {
            throw new IOException(e);
        }
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
