package org.stook.imaging.composite;

import java.util.Optional;
import org.stook.imaging.codec.FrameHeader;
import org.stook.imaging.codec.Origin;

/**
 * What every file of a composition says of itself.
 *
 * @param pixelsPerInch of the master, on the subject where pixels were calibrated, else as the reference frame says
 */
record Imprint(Origin origin, double pixelsPerInch) {
    private static final double DEFAULT_PPI = 300;

    /**
     * @param reference the reference frame's
     * @param frames that were given
     * @param used that were blended
     */
    static Imprint of(Recipe recipe, FrameHeader reference, int frames, int used) {
        // One frame alone is no composite, and must not be tagged as one.
        Optional<Origin.Composite> sources =
                used < 2 ? Optional.empty() : Optional.of(new Origin.Composite(frames, used));
        double resolution =
                recipe.caption().pixelsPerInch(reference.pixelsPerInch().orElse(DEFAULT_PPI));
        Origin origin = new Origin("Stook " + EngineVersion.current(), recipe.caption(), reference.capture(), sources);
        return new Imprint(origin, resolution);
    }
}
