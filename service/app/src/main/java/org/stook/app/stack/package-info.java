/**
 * Stacks: which frames belong together, in what order, and when that is fixed.
 */
@NullMarked
package org.stook.app.stack;

import org.jspecify.annotations.NullMarked;
