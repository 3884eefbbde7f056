package org.stook.app.publish;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How good a composite is, as the worker judged it.
 *
 * @param total 0 to 100
 * @param verdict ACCEPT, LOOK or RESHOOT
 * @param parts what the total is made of
 */
public record Score(int total, String verdict, List<Part> parts) {
    /** @param value in {@code unit}; null if it could not be measured */
    public record Part(
            String name,
            @Nullable Double value,
            @Nullable String unit,
            @Nullable Double points,
            @Nullable String verdict,
            @Nullable String sentence) {}

    @SuppressWarnings("NullAway") // JSON may leave the list out
    public Score {
        parts = parts == null ? List.of() : List.copyOf(parts);
    }
}
