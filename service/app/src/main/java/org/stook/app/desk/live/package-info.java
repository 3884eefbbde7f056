/**
 * What open pages show and what changes by itself. The service looks once for all of them, renders what changed once for all who see
 * the same, and sends each only that. How to add one: a {@link org.stook.app.desk.live.View}, and elements of its page that take its
 * parts ({@code sse-swap}).
 */
@NullMarked
package org.stook.app.desk.live;

import org.jspecify.annotations.NullMarked;
