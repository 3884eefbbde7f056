/**
 * Published methods written again from their papers, and the scores that others published: what the measures are calibrated
 * against.
 */
@NullMarked
package org.stook.comparison.published;

import org.jspecify.annotations.NullMarked;
