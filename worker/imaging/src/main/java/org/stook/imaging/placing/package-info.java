/** Placing: drawing a frame into the common area through its placement, once, with a sharp kernel. */
@NullMarked
package org.stook.imaging.placing;

import org.jspecify.annotations.NullMarked;
