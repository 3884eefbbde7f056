/** The database of a test: a real one, never a stand-in, and never a reason to skip. */
@NullMarked
package org.stook.postgres.testing;

import org.jspecify.annotations.NullMarked;
