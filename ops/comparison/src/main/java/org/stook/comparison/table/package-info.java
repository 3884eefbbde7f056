/** How the bench prints what it found: one table, and the machine it was found on. */
@NullMarked
package org.stook.comparison.table;

import org.jspecify.annotations.NullMarked;
