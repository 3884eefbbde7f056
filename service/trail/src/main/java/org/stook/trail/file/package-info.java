/** The trail's heads and leaf hashes on disk, outside the database. */
@NullMarked
package org.stook.trail.file;

import org.jspecify.annotations.NullMarked;
