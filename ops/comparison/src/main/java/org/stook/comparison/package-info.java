/**
 * The bench: Stook beside a straightforward pipeline on a general-purpose vision library, beside the truth where it is known,
 * and beside published scores. Built only in the profile {@code bench}.
 */
@NullMarked
package org.stook.comparison;

import org.jspecify.annotations.NullMarked;
