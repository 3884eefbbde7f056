/** What the survey says of generated sweeps from which something is missing, against what is. */
@NullMarked
package org.stook.comparison.sweep;

import org.jspecify.annotations.NullMarked;
