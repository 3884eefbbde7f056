/** What a process does before its first stack, so that this is composed as fast as the next. */
@NullMarked
package org.stook.imaging.composite.rehearsal;

import org.jspecify.annotations.NullMarked;
