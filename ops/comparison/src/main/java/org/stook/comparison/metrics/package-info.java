/**
 * Measures of image fidelity, each written from its paper or standard and independent of the imaging core, so that they can
 * judge it. All take planes of nominal range 0 to 1; those defined on 8-bit codes scale to 0 to 255 inside.
 *
 * <p>How to add one: a final class with static methods, its source in the class comment with every constant that the source
 * fixes, and a test that checks it against a worked example, a closed form or another implementation.
 */
@NullMarked
package org.stook.comparison.metrics;

import org.jspecify.annotations.NullMarked;
