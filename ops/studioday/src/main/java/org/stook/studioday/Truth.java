package org.stook.studioday;

/**
 * What a file is, by the script.
 *
 * @param stack number of the stack it belongs to
 */
record Truth(Kind kind, int stack) {
    enum Kind {
        /** A frame of the sweep. */
        SWEEP,
        /** A frame of the label. */
        SLATE,
        /** To be set aside. */
        STRAY,
        /** Raw beside its picture. */
        RAW,
        /** Cut short for good, or no picture. */
        BROKEN
    }
}
