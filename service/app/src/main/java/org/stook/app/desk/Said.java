package org.stook.app.desk;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.web.util.UriComponentsBuilder;

/** What was typed into the fields of a form or an address: empty counts as not said, and what cannot be is refused in a sentence. */
final class Said {
    private Said() {}

    static @Nullable String of(@Nullable String value) {
        return value == null || value.isBlank() ? null : value.strip();
    }

    static void put(Map<String, String> all, String name, @Nullable String value) {
        String said = of(value);
        if (said != null) all.put(name, said);
    }

    static @Nullable Instant dayBegins(String name, @Nullable String value, ZoneId zone) {
        return of(value) == null
                ? null
                : day(name, String.valueOf(value)).atStartOfDay(zone).toInstant();
    }

    /** The day is included. */
    static @Nullable Instant dayEnds(String name, @Nullable String value, ZoneId zone) {
        return of(value) == null
                ? null
                : day(name, String.valueOf(value))
                        .plusDays(1)
                        .atStartOfDay(zone)
                        .toInstant();
    }

    private static LocalDate day(String name, String value) {
        try {
            return LocalDate.parse(value.strip());
        } catch (DateTimeParseException e) {
            throw Refusal.unfit(name + ": found '" + value + "', expected a day such as 2026-03-14");
        }
    }

    /** A whole number from 0 to the most. */
    static @Nullable Integer number(String name, @Nullable String value, int most) {
        String said = of(value);
        if (said == null) return null;
        if (!said.matches("[0-9]{1,9}") || Integer.parseInt(said) > most) {
            throw Refusal.unfit(name + ": found '" + value + "', expected a whole number from 0 to " + most);
        }
        return Integer.valueOf(said);
    }

    static @Nullable String word(String name, @Nullable String value, String... words) {
        String said = of(value);
        if (said == null) return null;
        String upper = said.toUpperCase(Locale.ROOT);
        for (String word : words) if (word.equals(upper)) return word;
        throw Refusal.unfit(name + ": found '" + value + "', expected one of " + String.join(", ", words));
    }

    static String address(String path, Map<String, String> query) {
        UriComponentsBuilder address = UriComponentsBuilder.fromPath(path);
        query.forEach((name, value) -> address.queryParam(name, "{" + name + "}"));
        return address.encode().buildAndExpand(query).toUriString();
    }
}
