/**
 * The seam between service and worker: runs, the order in which they are worked, and who works. The two sides meet in
 * these tables and never call each other. The worker's own half is {@link org.stook.orders.attempt}.
 *
 * <p>Every change of state is checked and recorded by the database itself (see the migrations), so what is here can neither
 * take an illegal way nor forget the audit entry.
 */
@NullMarked
package org.stook.orders;

import org.jspecify.annotations.NullMarked;
