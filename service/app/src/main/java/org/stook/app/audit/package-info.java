/**
 * Reads and writes the trail of who did what. Depends on no other package of the service.
 */
@NullMarked
package org.stook.app.audit;

import org.jspecify.annotations.NullMarked;
