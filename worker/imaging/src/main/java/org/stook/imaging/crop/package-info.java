/** Cropping: the rectangle of the reference frame that every frame covers, and what it costs. */
@NullMarked
package org.stook.imaging.crop;

import org.jspecify.annotations.NullMarked;
