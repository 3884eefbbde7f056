/**
 * What waits, runs and needs a person, for display, and the minute's upkeep of the queue.
 */
@NullMarked
package org.stook.app.queue;

import org.jspecify.annotations.NullMarked;
