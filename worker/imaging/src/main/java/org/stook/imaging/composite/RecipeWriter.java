package org.stook.imaging.composite;

import java.util.Optional;
import org.stook.imaging.codec.Caption;
import org.stook.imaging.composite.region.RegionOverride;
import org.stook.imaging.tone.ToneSettings;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The one way a recipe is written. */
final class RecipeWriter {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private RecipeWriter() {}

    static String write(Recipe recipe) {
        return MAPPER.writeValueAsString(node(recipe));
    }

    static ObjectNode node(Recipe recipe) {
        ObjectNode node = MAPPER.createObjectNode();
        node.set("tone", tone(recipe.tone()));
        node.set("finish", tone(recipe.finish()));
        node.put("blend", recipe.blend());
        recipe.span()
                .ifPresentOrElse(
                        span -> node.putObject("span")
                                .put("first", span.first())
                                .put("last", span.last()),
                        () -> node.putNull("span"));
        ObjectNode crop = node.putObject("crop");
        recipe.crop().ratio().ifPresentOrElse(ratio -> crop.put("ratio", ratio), () -> crop.putNull("ratio"));
        crop.put("margin", recipe.crop().margin());
        recipe.reference().ifPresentOrElse(name -> node.put("reference", name), () -> node.putNull("reference"));
        ArrayNode overrides = node.putArray("overrides");
        recipe.overrides().forEach(region -> override(overrides.addObject(), region));
        caption(node.putObject("caption"), recipe.caption());
        return node;
    }

    private static void caption(ObjectNode node, Caption caption) {
        text(node, "title", caption.title());
        text(node, "creator", caption.creator());
        text(node, "rights", caption.rights());
        if (caption.pixelSize().isPresent()) {
            node.put("pixelSizeMicrometres", caption.pixelSize().getAsDouble());
        } else {
            node.putNull("pixelSizeMicrometres");
        }
    }

    private static void text(ObjectNode node, String name, Optional<String> text) {
        node.put(name, text.orElse(null));
    }

    private static void override(ObjectNode node, RegionOverride region) {
        node.put("frame", region.frame());
        ArrayNode outline = node.putArray("outline");
        region.outline().forEach(p -> outline.addArray().add(p.x()).add(p.y()));
        node.put("feather", region.feather());
    }

    private static ObjectNode tone(ToneSettings tone) {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("exposureEv", tone.exposureEv());
        triple(
                node.putArray("whiteBalance"),
                tone.whiteBalance().red(),
                tone.whiteBalance().green(),
                tone.whiteBalance().blue());
        node.put("blackPoint", tone.blackPoint());
        node.put("whitePoint", tone.whitePoint());
        node.put("midTone", tone.midTone());
        node.put("contrast", tone.contrast());
        node.put("saturation", tone.saturation());
        tone.monochrome()
                .ifPresentOrElse(
                        mix -> triple(node.putArray("monochrome"), mix.red(), mix.green(), mix.blue()),
                        () -> node.putNull("monochrome"));
        return node;
    }

    private static void triple(ArrayNode array, double a, double b, double c) {
        array.add(a).add(b).add(c);
    }
}
