/** One attempt at a run as a batch job: the steps from survey to publish, and what their ends mean for the queue. */
@NullMarked
package org.stook.node.job;

import org.jspecify.annotations.NullMarked;
