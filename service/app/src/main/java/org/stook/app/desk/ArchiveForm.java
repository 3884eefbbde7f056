package org.stook.app.desk;

import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stook.app.archive.ArchiveQuery;

/**
 * What is looked for in the archive as it comes from a page or in an address; empty counts as not said.
 *
 * @param from first day, YYYY-MM-DD, in the studio's zone
 * @param until last day, included
 */
record ArchiveForm(
        @Nullable String text,
        @Nullable String subject,
        @Nullable String station,
        @Nullable String from,
        @Nullable String until,
        @Nullable String settings,
        @Nullable String scoreFrom,
        @Nullable String scoreTo,
        @Nullable String state,
        @Nullable String verdict) {

    /** @throws Refusal saying which is no day, number or word */
    ArchiveQuery query(ZoneId zone) {
        return new ArchiveQuery(
                Said.of(subject),
                Said.of(station),
                Said.dayBegins("from", from, zone),
                Said.dayEnds("until", until, zone),
                Said.of(settings),
                Said.number("scoreFrom", scoreFrom, 100),
                Said.number("scoreTo", scoreTo, 100),
                Said.word("state", state, "PUBLISHED", "SUPERSEDED"),
                Said.word("verdict", verdict, "ACCEPT", "LOOK", "RESHOOT"),
                Said.of(text));
    }

    /** Those that say something, for addresses. */
    public Map<String, String> said() {
        Map<String, String> all = new LinkedHashMap<>();
        Said.put(all, "text", text);
        Said.put(all, "subject", subject);
        Said.put(all, "station", station);
        Said.put(all, "from", from);
        Said.put(all, "until", until);
        Said.put(all, "settings", settings);
        Said.put(all, "scoreFrom", scoreFrom);
        Said.put(all, "scoreTo", scoreTo);
        Said.put(all, "state", state);
        Said.put(all, "verdict", verdict);
        return all;
    }
}
