package org.stook.app.desk;

import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stook.app.queue.Wanted;

/**
 * Which runs are looked for on the queue page, as it stands in its address; empty counts as not said.
 *
 * @param state of the runs in lower case, or any; not said: those that wait
 * @param person that only which needs a person
 * @param table that only which is on the table
 * @param from first day of ordering, YYYY-MM-DD, in the studio's zone
 * @param until last day, included
 */
record QueueForm(
        @Nullable String state,
        @Nullable String person,
        @Nullable String station,
        @Nullable String text,
        @Nullable String table,
        @Nullable String priority,
        @Nullable String from,
        @Nullable String until) {
    static final String ANY = "any";
    private static final String[] STATES = {
        "READY", "HELD", "RUNNING", "PUBLISHING", "PUBLISHED", "SUPERSEDED", "FAILED", "QUARANTINED", "CANCELLED"
    };

    /** @throws Refusal saying which is no day, number or word */
    Wanted wanted(ZoneId zone) {
        return new Wanted(
                wantedState(),
                on(person),
                Said.of(station),
                Said.of(text),
                on(table),
                Said.number("priority", priority, 100),
                Said.dayBegins("from", from, zone),
                Said.dayEnds("until", until, zone));
    }

    private @Nullable String wantedState() {
        if (ANY.equals(state)) return null;
        if (Said.of(state) == null) return on(person) ? null : "READY";
        return Said.word("state", state, STATES);
    }

    private static boolean on(@Nullable String box) {
        return "true".equals(box);
    }

    /** Whether more is asked for than what waits at a station. */
    public boolean narrows() {
        Map<String, String> all = said();
        all.remove("station");
        return !all.isEmpty();
    }

    /** Those that say something, for addresses. */
    public Map<String, String> said() {
        Map<String, String> all = new LinkedHashMap<>();
        Said.put(all, "state", state);
        Said.put(all, "person", person);
        Said.put(all, "station", station);
        Said.put(all, "text", text);
        Said.put(all, "table", table);
        Said.put(all, "priority", priority);
        Said.put(all, "from", from);
        Said.put(all, "until", until);
        return all;
    }

    /** The address of the page with these and one more. */
    public String address(String path, @Nullable String after) {
        Map<String, String> all = said();
        Said.put(all, "after", after);
        return Said.address(path, all);
    }
}
