package org.stook.app.archive;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One publication as the archive lists it.
 *
 * @param seq its number in the order of the commits: the cursor
 * @param name of the master, relative to its share's root
 * @param state of its run: PUBLISHED or SUPERSEDED
 * @param settingsId of the tone settings that were ordered
 */
public record Holding(
        long seq,
        long runId,
        long stackId,
        String subject,
        @Nullable String view,
        String station,
        String name,
        String sha256,
        long bytes,
        String engineVersion,
        Instant publishedAt,
        String state,
        @Nullable Integer score,
        @Nullable String verdict,
        String settingsId) {}
