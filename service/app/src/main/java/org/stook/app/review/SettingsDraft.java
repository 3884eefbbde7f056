package org.stook.app.review;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Settings of a run as a page's fields. What is no number is handed on as typed: the settings' reader says what it expected. A field
 * left as it usually is leaves its member out, so that the same settings get the same hash.
 *
 * @param red gain of the white balance, likewise green and blue
 * @param monochrome "true" if the result is to be grey
 * @param first file name of the first frame of the span, empty for the whole sweep; both or none
 * @param ratio width divided by height, empty for the frames' own
 * @param reference file name, empty: the middle of the sweep
 * @param overrides JSON list of regions taken from named frames
 */
public record SettingsDraft(
        @Nullable String exposureEv,
        @Nullable String red,
        @Nullable String green,
        @Nullable String blue,
        @Nullable String blackPoint,
        @Nullable String whitePoint,
        @Nullable String midTone,
        @Nullable String contrast,
        @Nullable String saturation,
        @Nullable String monochrome,
        @Nullable String blend,
        @Nullable String first,
        @Nullable String last,
        @Nullable String ratio,
        @Nullable String margin,
        @Nullable String reference,
        @Nullable String overrides) {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final double ONE = 1;
    /** Luminance of sRGB's primaries (IEC 61966-2-1), for a grey that keeps how light colours look; they sum to 1. */
    private static final double[] GREY = {0.2126, 0.7152, 0.0722};

    /** The fields that show these settings. */
    public static SettingsDraft of(JsonNode settings) {
        JsonNode tone = settings.path("tone");
        JsonNode balance = tone.path("whiteBalance");
        JsonNode crop = settings.path("crop");
        JsonNode span = settings.path("span");
        JsonNode regions = settings.path("overrides");
        return new SettingsDraft(
                number(tone.path("exposureEv"), 0),
                number(balance.path(0), ONE),
                number(balance.path(1), ONE),
                number(balance.path(2), ONE),
                number(tone.path("blackPoint"), 0),
                number(tone.path("whitePoint"), ONE),
                number(tone.path("midTone"), ONE),
                number(tone.path("contrast"), 0),
                number(tone.path("saturation"), ONE),
                tone.path("monochrome").isArray() ? "true" : "",
                settings.path("blend").stringValue("region"),
                span.path("first").stringValue(""),
                span.path("last").stringValue(""),
                crop.path("ratio").isNumber() ? number(crop.path("ratio"), ONE) : "",
                number(crop.path("margin"), 0),
                settings.path("reference").stringValue(""),
                regions.isArray() ? regions.toString() : "[]");
    }

    /**
     * The settings with these fields in the place of what {@code base} says of them; the rest of {@code base} stays.
     *
     * @throws IllegalArgumentException if the overrides are no JSON
     */
    public JsonNode over(JsonNode base) {
        ObjectNode all = base.isObject() ? ((ObjectNode) base).deepCopy() : MAPPER.createObjectNode();
        set(all, "tone", tone(base.path("tone")));
        all.remove("blend");
        if (!text(blend).isEmpty() && !text(blend).equals("region")) all.put("blend", text(blend));
        ObjectNode span = MAPPER.createObjectNode();
        if (!text(first).isEmpty()) span.put("first", text(first));
        if (!text(last).isEmpty()) span.put("last", text(last));
        set(all, "span", span);
        ObjectNode crop = MAPPER.createObjectNode();
        if (!text(ratio).isEmpty()) put(crop, "ratio", ratio, Double.NaN);
        put(crop, "margin", margin, 0);
        set(all, "crop", crop);
        all.remove("reference");
        if (!text(reference).isEmpty()) all.put("reference", text(reference));
        all.remove("overrides");
        JsonNode regions = regions();
        if (!regions.isEmpty()) all.set("overrides", regions);
        return all;
    }

    private ObjectNode tone(JsonNode before) {
        ObjectNode tone = MAPPER.createObjectNode();
        put(tone, "exposureEv", exposureEv, 0);
        ArrayNode balance = MAPPER.createArrayNode();
        for (String gain : new String[] {text(red), text(green), text(blue)}) balance.add(value(gain, ONE));
        if (balance.valueStream().anyMatch(gain -> !gain.isNumber() || gain.doubleValue() != ONE)) {
            tone.set("whiteBalance", balance);
        }
        put(tone, "blackPoint", blackPoint, 0);
        put(tone, "whitePoint", whitePoint, ONE);
        put(tone, "midTone", midTone, ONE);
        put(tone, "contrast", contrast, 0);
        put(tone, "saturation", saturation, ONE);
        if (text(monochrome).equals("true")) {
            JsonNode mix = before.path("monochrome");
            tone.set("monochrome", mix.isArray() ? mix : grey());
        }
        return tone;
    }

    private static ArrayNode grey() {
        ArrayNode grey = MAPPER.createArrayNode();
        for (double share : GREY) grey.add(share);
        return grey;
    }

    private JsonNode regions() {
        try {
            return MAPPER.readTree(text(overrides).isEmpty() ? "[]" : text(overrides));
        } catch (tools.jackson.core.JacksonException e) {
            throw new IllegalArgumentException("settings.overrides: found no valid JSON, expected a list", e);
        }
    }

    private static void set(ObjectNode all, String name, ObjectNode value) {
        all.remove(name);
        if (!value.isEmpty()) all.set(name, value);
    }

    private static void put(ObjectNode in, String name, @Nullable String typed, double usual) {
        JsonNode value = value(text(typed), usual);
        if (!value.isNumber() || value.doubleValue() != usual) in.set(name, value);
    }

    private static JsonNode value(String typed, double usual) {
        if (typed.isEmpty()) return JsonNodeFactory.instance.numberNode(usual);
        try {
            return JsonNodeFactory.instance.numberNode(Double.parseDouble(typed));
        } catch (NumberFormatException e) {
            return JsonNodeFactory.instance.stringNode(typed);
        }
    }

    private static String number(JsonNode node, double usual) {
        double value = node.isNumber() ? node.doubleValue() : usual;
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }

    private static String text(@Nullable String typed) {
        return Objects.requireNonNullElse(typed, "").strip();
    }
}
