/**
 * Kernels of the imaging core, one by one, under JMH. How to add one: a method with {@code @Benchmark} in {@link
 * org.stook.comparison.kernel.Kernels} that returns what it made, and its bytes a pixel in the command that prints them.
 */
@NullMarked
package org.stook.comparison.kernel;

import org.jspecify.annotations.NullMarked;
