/** The service: watches the stations, keeps the queue and shows both to people. It never touches pixels; workers do. */
@NullMarked
package org.stook.app;

import org.jspecify.annotations.NullMarked;
