package org.stook.app;

import java.time.Duration;

/**
 * Something that one of the services does again and again.
 *
 * @param name unique, for the queue and the log
 * @param between pause after each step
 * @param step ends within a few seconds; what it throws is logged, and the next step comes all the same
 */
record Recurring(String name, Duration between, Runnable step) {}
