/**
 * Focus brackets rendered from a subject and a plan, and the truth about them. Every frame is drawn in its own geometry
 * from the subject's functions, so that no picture is ever resampled; the same plan gives the same samples whatever the
 * number of threads.
 *
 * <p>Conventions: pixel centres at integers, x to the right, y down, arrays row by row. A placement is the 3 x 3 map from
 * pixels of the reference frame to pixels of a frame, row-major.
 */
@NullMarked
package org.stook.scenes.bracket;

import org.jspecify.annotations.NullMarked;
