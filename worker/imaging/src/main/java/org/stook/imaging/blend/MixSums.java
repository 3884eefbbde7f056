package org.stook.imaging.blend;

import java.util.stream.Stream;

/**
 * What a mix has added up so far.
 *
 * @param width of the composite
 * @param height of the composite
 * @param fine weighted sums of the finest band, one a channel
 * @param coarse of what is below it, at half size
 */
@SuppressWarnings("ArrayRecordComponent") // read by channel, never compared
record MixSums(int width, int height, TiledSum[] fine, TiledSum fineWeight, TiledSum[] coarse, TiledSum coarseWeight) {
    static MixSums blank(BlendPlan plan, int tiles) {
        return new MixSums(
                plan.width(),
                plan.height(),
                sums(plan.channels(), tiles, Phases.COUNT),
                new TiledSum(tiles, Phases.COUNT),
                sums(plan.channels(), tiles, 1),
                new TiledSum(tiles, 1));
    }

    private static TiledSum[] sums(int channels, int tiles, int phases) {
        return Stream.generate(() -> new TiledSum(tiles, phases))
                .limit(channels)
                .toArray(TiledSum[]::new);
    }

    int channels() {
        return fine.length;
    }
}
