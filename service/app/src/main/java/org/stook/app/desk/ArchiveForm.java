package org.stook.app.desk;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Locale;
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
        Instant first = from == null || from.isBlank()
                ? null
                : day("from", from).atStartOfDay(zone).toInstant();
        Instant last = until == null || until.isBlank()
                ? null
                : day("until", until).plusDays(1).atStartOfDay(zone).toInstant();
        return new ArchiveQuery(
                said(subject),
                said(station),
                first,
                last,
                said(settings),
                score("scoreFrom", scoreFrom),
                score("scoreTo", scoreTo),
                word("state", state, "PUBLISHED", "SUPERSEDED"),
                word("verdict", verdict, "ACCEPT", "LOOK", "RESHOOT"),
                said(text));
    }

    /** Those that say something, for addresses. */
    public Map<String, String> said() {
        Map<String, String> all = new LinkedHashMap<>();
        put(all, "text", text);
        put(all, "subject", subject);
        put(all, "station", station);
        put(all, "from", from);
        put(all, "until", until);
        put(all, "settings", settings);
        put(all, "scoreFrom", scoreFrom);
        put(all, "scoreTo", scoreTo);
        put(all, "state", state);
        put(all, "verdict", verdict);
        return all;
    }

    private static void put(Map<String, String> all, String name, @Nullable String value) {
        String said = said(value);
        if (said != null) all.put(name, said);
    }

    private static @Nullable String said(@Nullable String value) {
        return value == null || value.isBlank() ? null : value.strip();
    }

    private static LocalDate day(String name, String value) {
        try {
            return LocalDate.parse(value.strip());
        } catch (DateTimeParseException e) {
            throw Refusal.unfit(name + ": found '" + value + "', expected a day such as 2026-03-14");
        }
    }

    private static @Nullable Integer score(String name, @Nullable String value) {
        if (value == null || value.isBlank()) return null;
        if (!value.strip().matches("[0-9]{1,3}") || Integer.parseInt(value.strip()) > 100) {
            throw Refusal.unfit(name + ": found '" + value + "', expected a whole number from 0 to 100");
        }
        return Integer.valueOf(value.strip());
    }

    private static @Nullable String word(String name, @Nullable String value, String... words) {
        if (value == null || value.isBlank()) return null;
        String upper = value.strip().toUpperCase(Locale.ROOT);
        for (String word : words) if (word.equals(upper)) return word;
        throw Refusal.unfit(name + ": found '" + value + "', expected one of " + String.join(", ", words));
    }
}
