package org.stook.imaging.composite;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.blend.BlendMethods;
import org.stook.imaging.codec.Caption;
import org.stook.imaging.composite.region.RegionOverride;
import org.stook.imaging.crop.CropRule;
import org.stook.imaging.tone.ToneSettings;
import org.stook.imaging.tone.ToneSettings.MonochromeMix;
import org.stook.imaging.tone.ToneSettings.WhiteBalance;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Turns the JSON of settings into a recipe. */
final class RecipeReader {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private final JsonMembers all;

    RecipeReader(String json) {
        this.all = new JsonMembers(
                "settings",
                parse(json),
                "tone",
                "finish",
                "blend",
                "span",
                "crop",
                "reference",
                "overrides",
                "caption");
    }

    Recipe recipe() {
        return new Recipe(
                tone("tone"),
                tone("finish"),
                all.text("blend").orElse(BlendMethods.standard().name()),
                all.member("span").map(this::span),
                all.member("crop").map(this::crop).orElse(CropRule.keepRatio()),
                all.text("reference"),
                overrides(),
                all.member("caption").map(this::caption).orElse(Caption.none()));
    }

    private static JsonNode parse(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JacksonException e) {
            throw new IllegalArgumentException("settings: found no valid JSON (" + e.getOriginalMessage() + ")", e);
        }
    }

    private ToneSettings tone(String name) {
        return all.member(name).map(node -> tone(name, node)).orElse(ToneSettings.none());
    }

    private ToneSettings tone(String name, JsonNode node) {
        JsonMembers t = new JsonMembers(
                all.path(name),
                node,
                "exposureEv",
                "whiteBalance",
                "blackPoint",
                "whitePoint",
                "midTone",
                "contrast",
                "saturation",
                "monochrome");
        return new ToneSettings(
                t.number("exposureEv", 0),
                t.triple("whiteBalance")
                        .map(g -> new WhiteBalance(g[0], g[1], g[2]))
                        .orElse(WhiteBalance.NONE),
                t.number("blackPoint", 0),
                t.number("whitePoint", 1),
                t.number("midTone", 1),
                t.number("contrast", 0),
                t.number("saturation", 1),
                t.triple("monochrome").map(m -> new MonochromeMix(m[0], m[1], m[2])));
    }

    private Recipe.Span span(JsonNode node) {
        JsonMembers span = new JsonMembers(all.path("span"), node, "first", "last");
        Optional<String> first = span.text("first");
        Optional<String> last = span.text("last");
        if (first.isEmpty() || last.isEmpty()) {
            throw new IllegalArgumentException(
                    "settings.span: found " + node + ", expected the file names first and last");
        }
        return new Recipe.Span(first.get(), last.get());
    }

    private List<RegionOverride> overrides() {
        List<RegionOverride> overrides = new ArrayList<>();
        all.each("overrides", (where, node) -> overrides.add(override(where, node)));
        return overrides;
    }

    private static RegionOverride override(String where, JsonNode node) {
        JsonMembers in = new JsonMembers(where, node, "frame", "outline", "feather");
        List<RegionOverride.Point> outline = new ArrayList<>();
        in.each("outline", (at, corner) -> {
            if (!corner.isArray()
                    || corner.size() != 2
                    || !corner.get(0).isNumber()
                    || !corner.get(1).isNumber()) {
                throw new IllegalArgumentException(at + ": found " + corner + ", expected [x, y]");
            }
            outline.add(new RegionOverride.Point(
                    corner.get(0).doubleValue(), corner.get(1).doubleValue()));
        });
        String frame = in.text("frame")
                .orElseThrow(() -> new IllegalArgumentException(
                        in.path("frame") + ": found nothing, expected the file name of a frame"));
        try {
            return new RegionOverride(frame, outline, in.number("feather", RegionOverride.USUAL_FEATHER));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(where + ": " + e.getMessage(), e);
        }
    }

    private CropRule crop(JsonNode node) {
        JsonMembers crop = new JsonMembers(all.path("crop"), node, "ratio", "margin");
        double margin = crop.number("margin", 0);
        if (margin != Math.rint(margin) || Math.abs(margin) > 1e6) {
            throw new IllegalArgumentException("settings.crop.margin: found " + margin + ", expected whole pixels");
        }
        return new CropRule(crop.optionalNumber("ratio"), (int) margin);
    }

    private Caption caption(JsonNode node) {
        JsonMembers caption =
                new JsonMembers(all.path("caption"), node, "title", "creator", "rights", "pixelSizeMicrometres");
        try {
            return new Caption(
                    caption.text("title"),
                    caption.text("creator"),
                    caption.text("rights"),
                    caption.optionalNumber("pixelSizeMicrometres"));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(all.path("caption") + ": " + e.getMessage(), e);
        }
    }
}
