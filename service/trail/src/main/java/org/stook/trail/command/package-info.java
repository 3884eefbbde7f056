/** The command {@code verify}. */
@NullMarked
package org.stook.trail.command;

import org.jspecify.annotations.NullMarked;
