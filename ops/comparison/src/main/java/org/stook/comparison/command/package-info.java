/** The subcommands of the bench; each prints one table. */
@NullMarked
package org.stook.comparison.command;

import org.jspecify.annotations.NullMarked;
