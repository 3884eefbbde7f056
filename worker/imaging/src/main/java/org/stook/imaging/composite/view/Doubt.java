package org.stook.imaging.composite.view;

/** Why a place of the composite deserves a second look; the bits of the doubt map. */
public enum Doubt {
    /** No frame shows enough detail there to decide by; mostly harmless. */
    UNDECIDED,
    /** Parts of far apart depths meet: the rim of a near part over a far one. */
    JUMP,
    /** Less sharp than the sharpest frame is there. */
    SOFT,
    /** Taken from a frame that a person named. */
    OVERRIDDEN;

    int bit() {
        return 1 << ordinal();
    }
}
