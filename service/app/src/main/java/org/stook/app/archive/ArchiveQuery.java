package org.stook.app.archive;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What is looked for; what is null does not matter.
 *
 * @param subject part of the subject
 * @param station exact name
 * @param from published at or after
 * @param until published before
 * @param settings beginning of the id of the tone settings
 * @param scoreFrom least score, 0 to 100
 * @param scoreTo greatest score, 0 to 100
 * @param state PUBLISHED or SUPERSEDED
 * @param verdict ACCEPT, LOOK or RESHOOT
 * @param text words that all occur in subject, view, codes on labels, station or file name
 */
public record ArchiveQuery(
        @Nullable String subject,
        @Nullable String station,
        @Nullable Instant from,
        @Nullable Instant until,
        @Nullable String settings,
        @Nullable Integer scoreFrom,
        @Nullable Integer scoreTo,
        @Nullable String state,
        @Nullable String verdict,
        @Nullable String text) {
    private static final int MOST_WORDS = 8;

    public static ArchiveQuery everything() {
        return new ArchiveQuery(null, null, null, null, null, null, null, null, null, null);
    }

    /** Conditions over o (order), p (publication), r (run), s (stack), t (station), and their parameters. */
    record Condition(String sql, Map<String, Object> parameters) {}

    Condition condition() {
        List<String> all = new ArrayList<>(List.of("true"));
        Map<String, Object> with = new TreeMap<>();
        add(all, with, "s.subject ilike :subject", "subject", subject == null ? null : "%" + literal(subject) + "%");
        add(all, with, "t.name = :station", "station", station);
        add(
                all,
                with,
                "p.published_at >= :from",
                "from",
                from == null ? null : from.atOffset(java.time.ZoneOffset.UTC));
        add(
                all,
                with,
                "p.published_at < :until",
                "until",
                until == null ? null : until.atOffset(java.time.ZoneOffset.UTC));
        add(all, with, "r.settings_id like :settings", "settings", settings == null ? null : literal(settings) + "%");
        add(all, with, "(r.score->>'total')::int >= :scoreFrom", "scoreFrom", scoreFrom);
        add(all, with, "(r.score->>'total')::int <= :scoreTo", "scoreTo", scoreTo);
        add(all, with, "r.state = :state", "state", state);
        add(all, with, "r.verdict = :verdict", "verdict", verdict);
        words(all, with);
        return new Condition(String.join(" and ", all), with);
    }

    private void words(List<String> all, Map<String, Object> with) {
        if (text == null || text.isBlank()) return;
        String[] words = text.strip().split("\\s+", MOST_WORDS + 1);
        for (int i = 0; i < Math.min(words.length, MOST_WORDS); i++) {
            add(
                    all,
                    with,
                    "(s.subject || ' ' || coalesce(s.view_name, '') || ' ' || s.codes::text || ' ' || t.name || ' ' || p.name)"
                            + " ilike :word" + i,
                    "word" + i,
                    "%" + literal(words[i]) + "%");
        }
    }

    private static void add(
            List<String> all, Map<String, Object> with, String sql, String name, @Nullable Object value) {
        if (value == null) return;
        all.add(sql);
        with.put(name, value);
    }

    /** Nobody means a wildcard by a percent sign in a name. */
    private static String literal(String text) {
        return text.replaceAll("([\\\\%_])", "\\\\$1");
    }
}
