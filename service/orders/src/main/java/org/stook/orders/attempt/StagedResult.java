package org.stook.orders.attempt;

/**
 * A composite that is written, flushed and read back, but not yet under its final name.
 *
 * @param stagedName where it lies, relative to the output share's root
 * @param finalName where it goes
 * @param sha256 of its bytes, 64 hex digits
 */
public record StagedResult(String stagedName, String finalName, String sha256) {}
