/** A drill: an owner of the database changes the sealed audit trail in every way there is, and verify has to name each. */
@NullMarked
package org.stook.tamper;

import org.jspecify.annotations.NullMarked;
