/**
 * Everything on one machine by one command: a local PostgreSQL, the service and its workers, started in this order, watched,
 * and stopped together.
 */
@NullMarked
package org.stook.launcher;

import org.jspecify.annotations.NullMarked;
