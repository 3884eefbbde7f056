/** Runs one stack through Stook or through the reference pipeline, each as a process of its own, and measures the process. */
@NullMarked
package org.stook.comparison.run;

import org.jspecify.annotations.NullMarked;
