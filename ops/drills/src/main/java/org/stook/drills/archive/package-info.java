/** Drills of the archive: pulls of what is new while publishers die, and large bags while memory is watched. */
@NullMarked
package org.stook.drills.archive;

import org.jspecify.annotations.NullMarked;
