package org.stook.imaging.blend;

/** A way to blend; stateless and safe to share between threads. */
public interface BlendMethod {
    /** The name in settings and records: lower case, hyphens, stable for ever. */
    String name();

    /** Starts blending one stack. */
    Blend begin(BlendPlan plan);
}
