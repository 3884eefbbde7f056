package org.stook.app.intake;

import org.stook.imaging.codec.FrameHeader;

/** What an examination found a file to be. */
sealed interface Finding {
    /** @param sha256 of all its bytes */
    record Whole(FrameHeader header, String sha256) implements Finding {}

    /** What the camera's sensor gave, undeveloped; not read to its end yet. */
    record Raw() implements Finding {}

    /** A frame whose end is missing; it may still be arriving. */
    record Incomplete(String reason) implements Finding {}

    /** @param code one word, for programs */
    record Refused(String code, String reason) implements Finding {}

    /** Was written to while it was read. */
    record Changed() implements Finding {}
}
