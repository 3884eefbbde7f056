/**
 * Finds what was published, tells what is new to those who come back for more, and knows what they have taken. What is packed for
 * them is made in {@code bag}.
 */
@NullMarked
package org.stook.app.archive;

import org.jspecify.annotations.NullMarked;
