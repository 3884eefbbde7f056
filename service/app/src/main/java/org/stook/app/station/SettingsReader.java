package org.stook.app.station;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import org.stook.imaging.composite.Recipe;
import org.stook.orders.NamePattern;
import org.stook.orders.Priorities;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;

/** Turns the JSON of a station's settings into settings. Whatever is left out is as usual. */
final class SettingsReader {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final JsonNode NOTHING = JsonNodeFactory.instance.objectNode();
    private static final int LONGEST_PATTERN = 200;
    /** Seconds of some thirty years: a camera may never have been told the date. */
    private static final double MOST_CLOCK = 1e9;

    private final StationSettings.Patience usual;

    /** @param usual how long to wait where the settings do not say */
    SettingsReader(StationSettings.Patience usual) {
        this.usual = usual;
    }

    /** @throws IllegalArgumentException naming the member, what was found and what was expected */
    StationSettings read(String json) {
        Members all =
                new Members("", parse(json), "splitting", "roles", "patience", "recipe", "priority", "names", "clocks");
        return new StationSettings(
                splitting(all.object("splitting", NOTHING, "folders", "slates", "gapSeconds", "framing", "exposure")),
                roles(all.object("roles", NOTHING)),
                patience(all.object("patience", NOTHING, "settleSeconds", "quietSeconds", "graceSeconds")),
                recipe(all.member("recipe").orElse(NOTHING)),
                (int) all.number("priority", 0, 100, Priorities.NORMAL),
                names(all),
                clocks(all.object("clocks", NOTHING)));
    }

    private static Map<String, Duration> clocks(Members in) {
        Map<String, Duration> clocks = new LinkedHashMap<>();
        in.names().forEach(body -> clocks.put(body, seconds(in.number(body, -MOST_CLOCK, MOST_CLOCK, 0))));
        return clocks;
    }

    private static NamePattern names(Members all) {
        try {
            return all.member("names")
                    .map(value -> NamePattern.of(all.text("names", value)))
                    .orElse(NamePattern.USUAL);
        } catch (IllegalArgumentException e) {
            String said = String.valueOf(e.getMessage());
            throw new IllegalArgumentException(said.startsWith("names") ? said : "names: " + said, e);
        }
    }

    static JsonNode parse(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JacksonException e) {
            throw new IllegalArgumentException(
                    "settings: found no valid JSON (" + e.getOriginalMessage() + "), expected an object", e);
        }
    }

    private static StationSettings.Splitting splitting(Members in) {
        return new StationSettings.Splitting(
                in.word("folders", StationSettings.Folders.class, StationSettings.Folders.STACK),
                in.word("slates", StationSettings.Slates.class, StationSettings.Slates.NONE),
                seconds(in.number("gapSeconds", 1, 86_400, 30)),
                in.flag("framing", true),
                in.flag("exposure", true));
    }

    private StationSettings.Patience patience(Members in) {
        return new StationSettings.Patience(
                seconds(in.number("settleSeconds", 0.5, 600, inSeconds(usual.settle()))),
                seconds(in.number("quietSeconds", 1, 86_400, inSeconds(usual.quiet()))),
                seconds(in.number("graceSeconds", 1, 86_400, inSeconds(usual.grace()))));
    }

    private static Map<String, Pattern> roles(Members in) {
        Map<String, Pattern> roles = new LinkedHashMap<>();
        in.names().forEach(name -> {
            String written = in.text(name, in.member(name).orElse(NOTHING));
            if (!name.matches("[a-z][a-z0-9-]{0,30}")) {
                throw new IllegalArgumentException(
                        in.at(name) + ": found this name, expected small letters, digits and dashes");
            }
            if (written.length() > LONGEST_PATTERN) {
                throw new IllegalArgumentException("%s: found %d characters, expected %d at most"
                        .formatted(in.at(name), written.length(), LONGEST_PATTERN));
            }
            try {
                roles.put(name, Pattern.compile(written));
            } catch (PatternSyntaxException e) {
                throw new IllegalArgumentException(
                        "%s: found '%s', expected a pattern (%s)".formatted(in.at(name), written, e.getDescription()),
                        e);
            }
        });
        return roles;
    }

    /** The worker's own reader judges it, so that nothing gets here that no worker could read. */
    private static String recipe(JsonNode node) {
        try {
            Recipe.parse(node.toString());
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("recipe, " + e.getMessage(), e);
        }
        return CanonicalJson.of(node);
    }

    private static Duration seconds(double seconds) {
        return Duration.ofMillis(Math.round(1000 * seconds));
    }

    private static double inSeconds(Duration duration) {
        return duration.toMillis() / 1000.0;
    }
}
