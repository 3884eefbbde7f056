package org.stook.trail.check;

import java.io.IOException;
import java.nio.file.Files;
import java.security.cert.X509Certificate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stook.trail.Head;
import org.stook.trail.file.StampFiles;
import org.stook.trail.stamp.TimeStamp;

/** Holds the time stamps that lie beside the heads against them. */
public final class StampCheck {
    private final KnownHeads heads;
    private final @Nullable X509Certificate trusted;
    private final Findings findings;

    /** @param trusted certificate of the authority, or of the one above it; null: whose stamps they are is not looked at */
    public StampCheck(KnownHeads heads, @Nullable X509Certificate trusted, Findings findings) {
        this.heads = heads;
        this.trusted = trusted;
        this.findings = findings;
    }

    /** Goes through all of them. */
    public void run(StampFiles stamps) throws IOException {
        int unread = 0;
        String last = "";
        int good = 0;
        for (long size : stamps.sizes()) {
            String name = String.valueOf(stamps.file(size).getFileName());
            Optional<Head> head = heads.ofSize(size);
            TimeStamp stamp;
            try {
                stamp = TimeStamp.read(Files.readAllBytes(stamps.file(size)));
            } catch (IOException e) {
                findings.bad(name + ": " + e.getMessage());
                continue;
            }
            if (head.isEmpty()) {
                findings.bad("%s: there is no head over %d entries, but it was stamped at %s"
                        .formatted(name, size, stamp.at()));
            } else if (!stamp.isOf(head.get())) {
                findings.bad("%s: the head over %d entries is another than the one stamped at %s"
                        .formatted(name, size, stamp.at()));
            } else if (trusted == null) {
                unread++;
            } else {
                Optional<String> signer = stamp.madeUnder(trusted);
                if (signer.isEmpty()) {
                    findings.bad("%s: not a stamp by the authority whose certificate was given".formatted(name));
                } else {
                    good++;
                    last = "the head over %d entries was there at %s, by the clock of %s"
                            .formatted(size, stamp.at(), signer.get());
                }
            }
        }
        if (good > 0) findings.proven("%d heads are stamped; %s".formatted(good, last));
        if (unread > 0) {
            findings.unproven(unread
                    + " heads are stamped, but no --authority was given: whose stamps they are was not looked at");
        }
    }
}
