/**
 * What was published, and where its files lie.
 */
@NullMarked
package org.stook.app.publish;

import org.jspecify.annotations.NullMarked;
