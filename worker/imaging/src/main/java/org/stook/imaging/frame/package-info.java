/**
 * The nouns every stage shares: pixel planes, frames, placements and areas. Depends on nothing else in Stook.
 *
 * <p>Conventions, everywhere in the imaging core: pixel centres lie at integer coordinates, x runs right, y runs down,
 * the first pixel of a row-major array is the top left one. Sample values of a {@link org.stook.imaging.frame.Frame} are
 * encoded (display-referred) values of the working profile, nominally 0 to 1.
 */
@NullMarked
package org.stook.imaging.frame;

import org.jspecify.annotations.NullMarked;
