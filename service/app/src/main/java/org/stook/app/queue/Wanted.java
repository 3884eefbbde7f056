package org.stook.app.queue;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Which runs are looked for; what is null does not matter.
 *
 * @param state one of {@link org.stook.orders.RunState}; those that wait come in the order in which they are taken, others the newest first
 * @param needsPerson only those that go no further without one, sent back ones among them
 * @param station exact name
 * @param text part of the subject, in any case
 * @param onTable only those whose subject is still mounted
 * @param priority at least that
 * @param from ordered at or after
 * @param until ordered before
 */
public record Wanted(
        @Nullable String state,
        boolean needsPerson,
        @Nullable String station,
        @Nullable String text,
        boolean onTable,
        @Nullable Integer priority,
        @Nullable Instant from,
        @Nullable Instant until) {
    private static final String READY = "READY";

    /** All that waits. */
    public static Wanted waiting(@Nullable String station) {
        return new Wanted(READY, false, station, null, false, null, null, null);
    }

    /** In the order of the queue: nothing but what waits is asked for. */
    public boolean inLine() {
        return READY.equals(state) && !needsPerson;
    }

    /** Conditions over r (run), s (stack), t (station), k (task), and their parameters. */
    record Condition(String sql, Map<String, Object> parameters) {}

    Condition condition() {
        List<String> all = new ArrayList<>(List.of("true"));
        Map<String, Object> with = new TreeMap<>();
        add(all, with, "r.state = :state", "state", state);
        if (needsPerson) {
            all.add("((" + Needs.STUCK + ") or exists (select 1 from stook.review v where v.run_id = r.id and "
                    + Needs.SENT_BACK + "))");
        }
        add(all, with, "t.name = :station", "station", station);
        add(all, with, "position(lower(:text) in lower(s.subject)) > 0", "text", text);
        if (onTable) all.add("s.on_table");
        add(all, with, "coalesce(k.priority, r.priority) >= :least", "least", priority);
        add(all, with, "r.created_at >= :from", "from", from == null ? null : from.atOffset(ZoneOffset.UTC));
        add(all, with, "r.created_at < :until", "until", until == null ? null : until.atOffset(ZoneOffset.UTC));
        return new Condition(String.join(" and ", all), with);
    }

    private static void add(
            List<String> all, Map<String, Object> with, String sql, String name, @Nullable Object value) {
        if (value == null) return;
        all.add(sql);
        with.put(name, value);
    }
}
