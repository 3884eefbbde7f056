package org.stook.trail.stamp;

import java.io.IOException;
import java.math.BigInteger;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.security.SecureRandom;
import java.time.Duration;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampRequestGenerator;
import org.bouncycastle.tsp.TimeStampResponse;
import org.stook.trail.Head;

/** Asks an authority for time stamps over HTTP (RFC 3161, section 3.4). */
public final class StampAuthority {
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final int NONCE_BITS = 64;

    private final URI address;
    private final HttpClient http =
            HttpClient.newBuilder().connectTimeout(PATIENCE).build();
    private final SecureRandom random = new SecureRandom();

    /** @param address http or https */
    public StampAuthority(URI address) {
        this.address = address;
    }

    /**
     * Has a head stamped.
     *
     * @return the token (CMS, DER), which answers what was asked; whose it is has still to be checked
     * @throws IOException if the authority cannot be reached, refuses, or answers something else
     */
    public byte[] stamp(Head head) throws IOException {
        TimeStampRequestGenerator generator = new TimeStampRequestGenerator();
        generator.setCertReq(true);
        TimeStampRequest request =
                generator.generate(TSPAlgorithms.SHA256, TimeStamp.imprint(head), new BigInteger(NONCE_BITS, random));
        try {
            TimeStampResponse response = new TimeStampResponse(answer(request.getEncoded()));
            response.validate(request);
            if (response.getTimeStampToken() == null) {
                throw new IOException("%s refused: status %d, %s"
                        .formatted(address, response.getStatus(), response.getStatusString()));
            }
            return response.getTimeStampToken().getEncoded();
        } catch (TSPException e) {
            throw new IOException(
                    address + " answered something else than a stamp of what it was sent: " + e.getMessage(), e);
        }
    }

    private byte[] answer(byte[] request) throws IOException {
        HttpRequest post = HttpRequest.newBuilder(address)
                .timeout(PATIENCE)
                .header("Content-Type", "application/timestamp-query")
                .POST(HttpRequest.BodyPublishers.ofByteArray(request))
                .build();
        try {
            HttpResponse<byte[]> response = http.send(post, HttpResponse.BodyHandlers.ofByteArray());
            if (response.statusCode() != 200) {
                throw new IOException(address + " answered with status " + response.statusCode());
            }
            return response.body();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while waiting for " + address, e);
        }
    }
}
