/**
 * The pieces of the Harrow Cabinet, an invented collection, and flat targets for measuring: pure functions of position.
 *
 * <p>A subject is a list of {@link org.stook.scenes.subject.Sheet}s from back to front. Each sheet is one height field with a
 * cover; what lies hidden behind another sheet exists as well, so a lens can look round a defocused edge. Coordinates are
 * in picture heights (the shorter side) about the centre of the reference frame, x to the right, y down; depth runs from
 * 0 (nearest point of the subject) to 1 (farthest), backdrops lie beyond 1.
 *
 * <p>How to add one: write a class that implements {@link org.stook.scenes.subject.Subject}, keep its detail under 0.35 cycles a
 * pixel (see {@code Grain}), and add a line to {@link org.stook.scenes.subject.Subjects}; the contract test then runs on it.
 */
@NullMarked
package org.stook.scenes.subject;

import org.jspecify.annotations.NullMarked;
