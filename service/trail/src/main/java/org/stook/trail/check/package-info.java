/**
 * Checks what somebody has in hand, an exported trail, a database or a bag, against heads that were kept elsewhere, and says
 * what that proves. Streams: memory does not grow with the trail.
 */
@NullMarked
package org.stook.trail.check;

import org.jspecify.annotations.NullMarked;
