/** Generated stacks whose truth is known, and what is measured against that truth. */
@NullMarked
package org.stook.comparison.stack;

import org.jspecify.annotations.NullMarked;
