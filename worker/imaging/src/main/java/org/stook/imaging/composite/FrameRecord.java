package org.stook.imaging.composite;

import java.util.Optional;
import org.stook.imaging.frame.Placement;

/**
 * What became of one file of the stack.
 *
 * @param file its name
 * @param sha256 of its bytes, lower-case hex; empty if it could not be read at all
 * @param reason why it is a stray, or a doubt about its placement; empty if there is nothing to say
 * @param placement reference pixel to frame pixel; for blended frames
 * @param exposureEv what evened it out to the reference frame, mean over the channels, EV; for blended frames
 */
public record FrameRecord(
        String file, String sha256, Role role, String reason, Optional<Placement> placement, double exposureEv) {
    /** What a file was used as. */
    public enum Role {
        REFERENCE,
        BLENDED,
        /** Belongs to the sweep and was registered, but lies outside the span that was asked for. */
        OUTSIDE_SPAN,
        STRAY
    }

    static FrameRecord stray(String file, String sha256, String reason) {
        return new FrameRecord(file, sha256, Role.STRAY, reason, Optional.empty(), 0);
    }
}
