package org.stook.imaging.codec;

import java.nio.file.Path;

/**
 * A file that cannot serve as a frame, and why, in one sentence fit for the operator: the file, what was found, what was
 * expected. It concerns this file only; the rest of the stack goes on.
 */
public final class UnreadableFrame extends Exception {
    /** Why a file was refused. */
    public enum Reason {
        /** Not a picture file of any known format. */
        NOT_A_FRAME,
        /** A known format, but the file stops early; it may still be arriving. */
        INCOMPLETE,
        /** A sound file of a known format that uses a variant we do not read. */
        UNSUPPORTED,
        /** Camera raw, and nothing on this machine that unpacks it. */
        UNDEVELOPED,
        /** A known format that contradicts itself. */
        DAMAGED
    }

    private static final long serialVersionUID = 1;

    private final Reason reason;

    private UnreadableFrame(Reason reason, String sentence) {
        super(sentence);
        this.reason = reason;
    }

    static UnreadableFrame of(Reason reason, Path file, String found, String expected) {
        return new UnreadableFrame(reason, "%s: found %s, expected %s".formatted(file.getFileName(), found, expected));
    }

    public Reason reason() {
        return reason;
    }

    /** The sentence; never null. */
    @Override
    public String getMessage() {
        return String.valueOf(super.getMessage());
    }
}
