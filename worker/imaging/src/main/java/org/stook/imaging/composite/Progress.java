package org.stook.imaging.composite;

/** Told at least once a frame how far a composition is. An unchecked exception thrown here ends the composition. */
@FunctionalInterface
public interface Progress {
    /** @param fraction of this stage, 0 to 1 */
    void at(String stage, double fraction);

    static Progress silent() {
        return (stage, fraction) -> {};
    }
}
