package org.stook.imaging.blend;

/**
 * Decides region by region which frame is sharp, then renders: the finest band from the frames with the strongest detail,
 * all below it from the decision alone.
 *
 * <p>The first pass learns, pixel by pixel, the strongest detail of any frame. In the second pass a frame's claim to a
 * pixel is how near its detail comes to that, averaged over the neighbourhood with weight where there is much detail: a
 * patch without texture of its own follows the textured parts around it. The claim is then fitted to the frame's own
 * edges by a guided filter (K. He, J. Sun and X. Tang, "Guided Image Filtering", IEEE PAMI 35(6), 2013; at a quarter of the size, after
 * He and Sun, "Fast Guided Filter", arXiv 1505.00996, 2015). The use of such filters on decision maps follows S. Li, X.
 * Kang and J. Hu, "Image Fusion with Guided Filtering", IEEE TIP 22(7), 2013; taking the finest band by detail and the
 * rest by the decision is our own, chosen because a decision alone loses overlapping bristles and detail alone lets the
 * blurred rim of a near part win over the far part behind it. Where no frame shows more than noise all claims are equal
 * and the noise averages out.
 */
public final class RegionBlend implements BlendMethod {
    @Override
    public String name() {
        return "region";
    }

    @Override
    public Blend begin(BlendPlan plan) {
        return new RegionFold(plan);
    }
}
