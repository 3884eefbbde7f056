/**
 * Blending: many placed frames in, one frame out that is sharp wherever any of them was.
 *
 * <p>Frames arrive already warped into the common area, every pixel valid, one at a time; a blend must not keep them
 * (memory may not grow with the number of frames). A method that decides first and renders second asks for two passes.
 */
@NullMarked
package org.stook.imaging.blend;

import org.jspecify.annotations.NullMarked;
