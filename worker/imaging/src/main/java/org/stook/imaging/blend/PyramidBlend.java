package org.stook.imaging.blend;

/**
 * Multi-scale blending: each frame is split into bands, and in each band a pixel is taken, for all channels alike,
 * mostly from the frames whose detail there is strongest. Where no frame shows more than noise the frames are averaged.
 *
 * <p>Laplacian pyramid after Burt and Adelson (1983), choice by local energy as in P. J. Burt and R. J. Kolczynski,
 * "Enhanced Image Capture Through Fusion", ICCV 1993; the noise-compensated soft choice is our own. One pass.
 */
public final class PyramidBlend implements BlendMethod {
    @Override
    public String name() {
        return "pyramid";
    }

    @Override
    public Blend begin(BlendPlan plan) {
        return new PyramidFold(plan);
    }
}
