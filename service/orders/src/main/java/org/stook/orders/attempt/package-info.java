/**
 * The worker's half of the seam: claim a run, report on it, publish behind the fence, and say how it ended. A worker
 * implements {@link org.stook.orders.attempt.Work} and gives it to {@link org.stook.orders.attempt.RunTask}; all else
 * happens here.
 */
@NullMarked
package org.stook.orders.attempt;

import org.jspecify.annotations.NullMarked;
