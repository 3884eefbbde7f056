/** Whether what a drill left behind is a history that may be. */
@NullMarked
package org.stook.drills.check;

import org.jspecify.annotations.NullMarked;
