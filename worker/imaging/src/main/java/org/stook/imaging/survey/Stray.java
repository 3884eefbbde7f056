package org.stook.imaging.survey;

import java.util.OptionalInt;

/**
 * A frame to set aside.
 *
 * @param frame index in capture order
 * @param sentence what was found, in words, to be read after the frame's name; where there is a twin, before the twin's
 * @param twin index of the frame that this one doubles
 */
public record Stray(int frame, Reason reason, String sentence, OptionalInt twin) {
    /** Why a frame is set aside. */
    public enum Reason {
        /** Nothing but black. */
        BLACK,
        /** Nothing but white. */
        BLOWN,
        /** Another width or height than most. */
        OTHER_SIZE,
        /** Another subject or framing than the sweep. */
        OTHER_SUBJECT,
        /** The same focus position, or the very same picture, as another frame. */
        DUPLICATE
    }
}
