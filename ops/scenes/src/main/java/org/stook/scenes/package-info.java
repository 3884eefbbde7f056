/** The command line of the generator of focus brackets. */
@NullMarked
package org.stook.scenes;

import org.jspecify.annotations.NullMarked;
