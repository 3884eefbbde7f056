package org.stook.imaging.codec.raw;

/** Why no picture came out of a raw file: what was found and what was expected, as parts of a sentence. */
public final class RawRefusal extends Exception {
    /** Whose fault it was. */
    public enum Cause {
        /** The library is not on this machine. */
        NO_LIBRARY,
        /** The library does not know such files, or its sensor is none we make pictures of. */
        UNSUPPORTED,
        /** The file contradicts itself, or stopped the process that unpacked it. */
        DAMAGED
    }

    private static final long serialVersionUID = 1;

    private final Cause cause;
    private final String expected;

    RawRefusal(Cause cause, String found, String expected) {
        super(found);
        this.cause = cause;
        this.expected = expected;
    }

    public Cause why() {
        return cause;
    }

    public String found() {
        return String.valueOf(getMessage());
    }

    public String expected() {
        return expected;
    }
}
