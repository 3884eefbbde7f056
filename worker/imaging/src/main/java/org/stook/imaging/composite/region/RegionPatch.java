package org.stook.imaging.composite.region;

import org.stook.imaging.blend.Blended;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Parallel;

/**
 * A frame's part of the composite under a region, ready to be laid over the blend.
 *
 * @param rank of the frame in the sweep
 * @param part the toned frame, drawn into {@code box}
 * @param box in pixels of the composite
 */
public record RegionPatch(int rank, Frame part, Area box) {
    /**
     * Mixes it in and enters it in both maps.
     *
     * @param origin the composite's area in the reference frame, whose pixels the mask counts in
     */
    public void layOver(Blended blended, RegionMask mask, Area origin, int threads) {
        int width = blended.composite().width();
        short[] source = blended.sourceMap();
        float[] depth = blended.depthMap().samples();
        Parallel.forEach(box.height(), threads, row -> {
            int y = box.y() + row;
            for (int column = 0; column < box.width(); column++) {
                int x = box.x() + column;
                float weight = (float) mask.weight(origin.x() + x, origin.y() + y);
                if (weight == 0) continue;
                int at = y * width + x;
                for (int c = 0; c < part.channels(); c++) {
                    float[] out = blended.composite().plane(c).samples();
                    float taken = part.plane(c).samples()[row * box.width() + column];
                    out[at] = weight * taken + (1 - weight) * out[at];
                }
                if (weight >= 0.5f) {
                    source[at] = (short) rank;
                    depth[at] = rank;
                }
            }
        });
    }
}
