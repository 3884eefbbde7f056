package org.stook.app.stack;

/** What came of the wish to seal a stack. */
public sealed interface Sealed {
    /** Frames fixed and run ordered, both in one transaction. */
    record Done(long stackId, long runId, int frames, int strays) implements Sealed {}

    /** @param reason a sentence: what is missing */
    record NotYet(String reason) implements Sealed {}

    /** The very same frames are in another stack already; this one was set aside. */
    record Known(long otherStackId) implements Sealed {}

    /** It is no longer collecting. */
    record Over(String state) implements Sealed {}
}
