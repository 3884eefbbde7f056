/**
 * Scoring: how far a composite can be trusted, judged against its own frames (a stack is its own reference).
 *
 * <p>How to add a measure: write one method in {@link org.stook.imaging.score.Scorecard} that turns a measurement into a
 * {@link org.stook.imaging.score.Part} with its unit, its two limits and a sentence an operator understands, and list it
 * in {@code Scorecard.parts}. The total is the worst part, so a new measure can only make a score stricter.
 */
@NullMarked
package org.stook.imaging.score;

import org.jspecify.annotations.NullMarked;
