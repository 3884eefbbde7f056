package org.stook.imaging.survey;

/**
 * A frame to set aside.
 *
 * @param frame index in capture order
 * @param sentence what was found and what it means, in words
 */
public record Stray(int frame, Reason reason, String sentence) {
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
