package org.stook.imaging.blend;

/** One stack being blended. Frames are added in sweep order, all of them once per pass; then {@link #finish()}. */
public interface Blend {
    /** How often the whole sweep is to be added: 1 or 2. */
    int passes();

    /** Whether frames are drawn in that pass; if not, their maps alone do, and none need be decoded. */
    default boolean draws(int pass) {
        return true;
    }

    /** Makes room for what a pass adds up. Called before its first frame is decoded. */
    default void begin(int pass) {}

    /**
     * Folds one frame in.
     *
     * @param pass 0-based pass
     * @param rank 0-based rank of the frame in the sweep
     */
    void add(int pass, int rank, BlendFrame frame);

    /** The composite and its maps. Called once, after the last frame of the last pass. */
    Blended finish();
}
