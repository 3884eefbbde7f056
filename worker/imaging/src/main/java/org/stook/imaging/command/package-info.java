/** The command line of the imaging core. */
@NullMarked
package org.stook.imaging.command;

import org.jspecify.annotations.NullMarked;
