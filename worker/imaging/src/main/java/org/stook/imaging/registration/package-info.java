/** Finding each frame's placement against the reference frame. */
@NullMarked
package org.stook.imaging.registration;

import org.jspecify.annotations.NullMarked;
