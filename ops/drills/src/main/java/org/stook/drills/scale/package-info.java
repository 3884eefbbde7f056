/** The queue's figures: many slots with simulated work on the true claims, and one worker's overhead on true work. */
@NullMarked
package org.stook.drills.scale;

import org.jspecify.annotations.NullMarked;
