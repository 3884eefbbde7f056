/**
 * The whole job on one stack, in order: survey, register, blend, finish, score. The only package that knows all stages;
 * start reading at {@link org.stook.imaging.composite.Composition}.
 */
@NullMarked
package org.stook.imaging.composite;

import org.jspecify.annotations.NullMarked;
