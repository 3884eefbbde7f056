/**
 * A scripted day in an invented studio, from one seed: two stations, many stacks, and all the mess that arrives with them, shot
 * into a real service as fast as it can be written. What came of every file is held against the script.
 */
@NullMarked
package org.stook.studioday;

import org.jspecify.annotations.NullMarked;
