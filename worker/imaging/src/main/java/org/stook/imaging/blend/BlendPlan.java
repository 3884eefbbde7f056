package org.stook.imaging.blend;

/**
 * What a blend knows before the first frame.
 *
 * @param width of every placed frame and of the composite, pixels
 * @param height of every placed frame and of the composite, pixels
 * @param channels 1 or 3
 * @param frames how many frames will be added in each pass; their index is their rank in the sweep
 * @param threads how many threads the blend may use, at least 1; the result must not depend on it
 */
public record BlendPlan(int width, int height, int channels, int frames, int threads) {
    public BlendPlan {
        if (width <= 0 || height <= 0 || frames <= 0 || threads <= 0 || (channels != 1 && channels != 3)) {
            throw new IllegalArgumentException("impossible blend: %d x %d, %d channels, %d frames, %d threads"
                    .formatted(width, height, channels, frames, threads));
        }
    }
}
