package org.stook.imaging.registration;

import java.util.Optional;
import org.stook.imaging.frame.Placement;

/**
 * Where one frame lies and how sure that is.
 *
 * @param placement reference pixel to pixel of this frame, full size
 * @param cornerErrorPx expected (one sigma) error at the worst corner, full-size pixels; infinite where not registered
 * @param residualPx robust spread of the matched tiles about the placement, full-size pixels, NaN where there are none
 * @param confidence 0 to 1: 1 where the corner error is far below a pixel, 0 where not registered
 */
public record Placed(
        Placement placement, double cornerErrorPx, double residualPx, double confidence, Optional<Doubt> doubt) {
    /** Whether the placement comes from the frame's own pixels. */
    public boolean registered() {
        return doubt.map(d -> d.reason() != Doubt.Reason.NOT_REGISTERED).orElse(true);
    }
}
