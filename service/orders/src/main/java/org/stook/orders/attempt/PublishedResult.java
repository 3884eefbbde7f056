package org.stook.orders.attempt;

import org.jspecify.annotations.Nullable;

/**
 * A composite under its final name.
 *
 * @param bytes its size
 * @param filesJson what stands beside it: JSON array of {@code {"name", "sha256", "bytes", "kind"}}
 * @param scoreJson its score as a JSON object
 * @param verdict ACCEPT, LOOK or RESHOOT
 */
public record PublishedResult(
        long bytes,
        String filesJson,
        @Nullable String scoreJson,
        @Nullable String verdict) {}
