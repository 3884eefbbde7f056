/**
 * Keeps what was published: checks on a schedule that files are what they were, removes what a station's policy lets go and
 * nothing else, and foresees when a share is full.
 */
@NullMarked
package org.stook.app.keeping;

import org.jspecify.annotations.NullMarked;
