/**
 * The worker process: one slot. It announces itself, claims runs from the queue, composes each in a batch job of its own
 * and publishes behind the fence. All it knows of the service are the tables behind {@link org.stook.orders}.
 */
@NullMarked
package org.stook.node;

import org.jspecify.annotations.NullMarked;
