/**
 * A real PostgreSQL beside this JVM, for the studio that has none yet and for tests.
 *
 * <p>The server's binaries come from the class path, its data are kept in a folder, and it ends when this JVM ends, however
 * that happens. {@link org.stook.postgres.LocalPostgres} is the way in; everything else serves it. Linux only: it leans on
 * {@code setpriv}, {@code setsid} and {@code /proc}.
 */
@NullMarked
package org.stook.postgres;

import org.jspecify.annotations.NullMarked;
