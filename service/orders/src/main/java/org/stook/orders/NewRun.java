package org.stook.orders;

/**
 * What to run.
 *
 * @param stackId a sealed stack
 * @param settingsId id of tone settings (64 hex digits)
 * @param priority see {@link Priorities}
 * @param actor who ordered it
 */
public record NewRun(long stackId, String settingsId, int priority, String actor) {}
