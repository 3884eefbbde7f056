package org.stook.app.archive.bag;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.stook.app.audit.AuditProofs;
import org.stook.trail.Proof;

/** That the audit entries on a publication are in the sealed trail: checked without this service by whoever has a head. */
@Component
class AuditProof implements BagAddition {
    private final AuditProofs proofs;

    AuditProof(AuditProofs proofs) {
        this.proofs = proofs;
    }

    @Override
    public String name() {
        return Proof.FILE;
    }

    @Override
    public Optional<byte[]> of(long run, long stack) {
        return Optional.of(proofs.ofPublication(run, stack).toJson().getBytes(StandardCharsets.UTF_8));
    }
}
