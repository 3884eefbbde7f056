/**
 * The audit trail outside the database: what an entry's hash covers, signed heads, proofs. Needs neither database nor service,
 * so that it can be checked in ten years.
 */
@NullMarked
package org.stook.trail;

import org.jspecify.annotations.NullMarked;
