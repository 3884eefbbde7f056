package org.stook.imaging.score;

/** What to do with a composite. In this order, so that the worst of several is the greatest. */
public enum Verdict {
    ACCEPT,
    LOOK,
    RESHOOT;

    Verdict orWorse(Verdict other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
