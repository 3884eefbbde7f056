/**
 * Drills: a studio of real processes is broken in known ways, and its history is checked. Also the figures of the queue at
 * scale. Not part of any program that is delivered.
 */
@NullMarked
package org.stook.drills;

import org.jspecify.annotations.NullMarked;
