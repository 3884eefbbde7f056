/**
 * Time stamps of heads by an outside authority (RFC 3161): somebody else's word, and clock, that a head existed. With one, not
 * even whoever holds the service's own key can make an older trail that differs.
 */
@NullMarked
package org.stook.trail.stamp;

import org.jspecify.annotations.NullMarked;
