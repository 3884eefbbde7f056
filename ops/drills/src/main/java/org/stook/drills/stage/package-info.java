/** A whole studio under our thumb: a database, shares, wires and worker processes that can each be broken and mended. */
@NullMarked
package org.stook.drills.stage;

import org.jspecify.annotations.NullMarked;
