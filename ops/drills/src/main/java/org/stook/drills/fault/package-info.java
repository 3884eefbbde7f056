/** What can go wrong in a studio, each as one call. How to add one: one method in {@link org.stook.drills.fault.Faults}. */
@NullMarked
package org.stook.drills.fault;

import org.jspecify.annotations.NullMarked;
