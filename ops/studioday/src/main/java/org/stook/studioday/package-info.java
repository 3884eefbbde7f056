/**
 * Drills of the intake against a service process and a database of their own, each from one seed. A scripted day in an invented
 * studio: two stations, many stacks, all the mess that arrives with them, shot as fast as it can be written, and what came of
 * every file held against the script. Faults: bad writers, a share that goes away, a service killed at any instant, and a check
 * of the history of every file. A burst: how many files a second.
 */
@NullMarked
package org.stook.studioday;

import org.jspecify.annotations.NullMarked;
