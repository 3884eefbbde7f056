package org.stook.imaging.registration;

/**
 * Something about one frame's placement that a person should know.
 *
 * @param sentence what was found and what it means, in words, to be read after the frame's name
 */
public record Doubt(Reason reason, String sentence) {
    /** What kind of doubt. */
    public enum Reason {
        /** This frame alone lies beside the path of its neighbours: something shook. */
        BUMPED,
        /** From this frame on everything lies elsewhere: stand or subject moved. */
        MOVED,
        /** Its scale belongs elsewhere in the sweep. */
        OUT_OF_ORDER,
        /** Placed, but the evidence is thin. */
        UNSURE,
        /** No placement could be found; the one given is a guess from the neighbours. */
        NOT_REGISTERED
    }
}
