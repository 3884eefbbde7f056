package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;

/** One stack being blended. Frames are added in sweep order, all of them once per pass; then {@link #finish()}. */
public interface Blend {
    /** How often the whole sweep is to be added: 1 or 2. */
    int passes();

    /** Whether frames of that pass must have all channels; if not, their luminance alone does as well. */
    default boolean needsColour(int pass) {
        return true;
    }

    /**
     * Folds one frame in. The frame is only lent: its samples may change once this returns.
     *
     * @param pass 0-based pass
     * @param frame 0-based rank of the frame in the sweep
     * @param placed the frame warped into the common area, encoded values, every pixel valid
     */
    void add(int pass, int frame, Frame placed);

    /** The composite and its maps. Called once, after the last frame of the last pass. */
    Blended finish();
}
