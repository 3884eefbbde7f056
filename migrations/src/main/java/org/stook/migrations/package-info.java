/** The database's schema and the way to bring a database up to it. */
@NullMarked
package org.stook.migrations;

import org.jspecify.annotations.NullMarked;
