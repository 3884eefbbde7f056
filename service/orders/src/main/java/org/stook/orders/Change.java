package org.stook.orders;

/**
 * Answer to an operator's order.
 *
 * @param done false when the run was in a state that does not allow it; nothing was changed then
 * @param state the run's state now
 */
public record Change(boolean done, RunState state) {}
