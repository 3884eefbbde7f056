/** The drills. How to add one: a line in {@link org.stook.drills.drill.Drills}, a casting of its own if it orders other than whole stacks. */
@NullMarked
package org.stook.drills.drill;

import org.jspecify.annotations.NullMarked;
