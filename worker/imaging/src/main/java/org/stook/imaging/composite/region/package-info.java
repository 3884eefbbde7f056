/** Regions of a composite that a person takes from a frame of their choice: outline, feathered edge, mixing. */
@NullMarked
package org.stook.imaging.composite.region;

import org.jspecify.annotations.NullMarked;
