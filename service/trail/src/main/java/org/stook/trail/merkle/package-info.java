/**
 * A hash tree over a growing list (RFC 9162, section 2.1, with SHA-256): heads, inclusion and consistency proofs. Knows
 * nothing of what the leaves are and where hashes are kept.
 */
@NullMarked
package org.stook.trail.merkle;

import org.jspecify.annotations.NullMarked;
