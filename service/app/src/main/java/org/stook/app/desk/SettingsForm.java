package org.stook.app.desk;

import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stook.app.station.StationSettings;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * The settings as the page's fields; whatever was typed is given back unchanged when it is refused.
 *
 * @param roles one "name = pattern" a line
 * @param recipe JSON
 * @param names pattern; empty: as usual
 * @param clocks one "serial number = seconds" a line
 */
record SettingsForm(
        String folders,
        String slates,
        String gapSeconds,
        boolean framing,
        boolean exposure,
        String roles,
        String settleSeconds,
        String quietSeconds,
        String graceSeconds,
        String priority,
        String recipe,
        @Nullable String names,
        @Nullable String clocks) {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    static SettingsForm of(StationSettings now, String body) {
        StationSettings.Splitting splitting = now.splitting();
        StationSettings.Patience patience = now.patience();
        JsonNode recipe = MAPPER.readTree(body).path("recipe");
        return new SettingsForm(
                word(splitting.folders()),
                word(splitting.slates()),
                seconds(splitting.gap().toMillis()),
                splitting.framing(),
                splitting.exposure(),
                now.roles().entrySet().stream()
                        .map(role -> role.getKey() + " = " + role.getValue())
                        .collect(Collectors.joining("\n")),
                seconds(patience.settle().toMillis()),
                seconds(patience.quiet().toMillis()),
                seconds(patience.grace().toMillis()),
                Integer.toString(now.priority()),
                recipe.isMissingNode() ? "{}" : recipe.toPrettyString(),
                now.names().toString(),
                now.clocks().entrySet().stream()
                        .map(clock -> clock.getKey() + " = "
                                + seconds(clock.getValue().toMillis()))
                        .collect(Collectors.joining("\n")));
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static String seconds(long millis) {
        return millis % 1000 == 0 ? Long.toString(millis / 1000) : Double.toString(millis / 1000.0);
    }

    /** @throws IllegalArgumentException if a line is no role or the recipe is no JSON */
    String json() {
        ObjectNode all = MAPPER.createObjectNode();
        ObjectNode splitting = all.putObject("splitting");
        splitting.put("folders", folders).put("slates", slates);
        number(splitting, "gapSeconds", gapSeconds);
        splitting.put("framing", framing).put("exposure", exposure);
        ObjectNode named = all.putObject("roles");
        lines("roles", roles, "subject = HC-[0-9]+").forEach(named::put);
        ObjectNode late = all.putObject("clocks");
        lines("clocks", clocks == null ? "" : clocks, "4500117 = -3600")
                .forEach((body, typed) -> number(late, body, typed));
        ObjectNode patience = all.putObject("patience");
        Map.of("settleSeconds", settleSeconds, "quietSeconds", quietSeconds, "graceSeconds", graceSeconds)
                .forEach((name, typed) -> number(patience, name, typed));
        number(all, "priority", priority);
        all.set("recipe", parsed());
        if (names != null && !names.isBlank()) all.put("names", names.strip());
        return all.toString();
    }

    /** What is no number goes in as typed: the settings' reader says what was expected. */
    private static void number(ObjectNode in, String name, String typed) {
        try {
            double value = Double.parseDouble(typed.strip());
            if (value == Math.rint(value)) {
                in.put(name, (long) value);
            } else {
                in.put(name, value);
            }
        } catch (NumberFormatException e) {
            in.put(name, typed);
        }
    }

    private static Map<String, String> lines(String name, String typed, String such) {
        Map<String, String> named = new java.util.LinkedHashMap<>();
        for (String line :
                typed.lines().map(String::strip).filter(l -> !l.isEmpty()).toList()) {
            int at = line.indexOf('=');
            if (at < 1) {
                throw new IllegalArgumentException(name + ": found '" + line + "', expected lines such as " + such);
            }
            named.put(line.substring(0, at).strip(), line.substring(at + 1).strip());
        }
        return named;
    }

    private JsonNode parsed() {
        try {
            return MAPPER.readTree(recipe.isBlank() ? "{}" : recipe);
        } catch (JacksonException e) {
            throw new IllegalArgumentException(
                    "recipe: found no valid JSON (" + e.getOriginalMessage() + "), expected an object", e);
        }
    }
}
