package org.stook.imaging.composite;

import java.util.List;
import java.util.Optional;
import org.stook.imaging.blend.BlendMethods;
import org.stook.imaging.codec.Caption;
import org.stook.imaging.composite.region.RegionOverride;
import org.stook.imaging.crop.CropRule;
import org.stook.imaging.tone.ToneSettings;

/**
 * The settings of a composition: everything besides the frames that decides a single byte of the result.
 *
 * @param tone made alike to every frame before blending
 * @param finish made to the composite, recorded apart from {@code tone}
 * @param blend name of a blend method
 * @param span part of the sweep to blend; the rest stays soft
 * @param crop how the common area is chosen
 * @param reference file name of the reference frame; without one the middle of the sweep serves
 * @param overrides regions taken from frames of a person's choice, laid over the blend one after the other
 * @param caption what the files say of themselves in words
 */
public record Recipe(
        ToneSettings tone,
        ToneSettings finish,
        String blend,
        Optional<Span> span,
        CropRule crop,
        Optional<String> reference,
        List<RegionOverride> overrides,
        Caption caption) {

    /** First and last frame to blend, by file name, in either order, both included. */
    public record Span(String first, String last) {}

    public Recipe {
        overrides = List.copyOf(overrides);
        if (BlendMethods.byName(blend).isEmpty()) {
            throw new IllegalArgumentException("there is no blend method '%s'; there are: %s"
                    .formatted(
                            blend,
                            String.join(
                                    ", ",
                                    BlendMethods.all().stream()
                                            .map(method -> method.name())
                                            .toList())));
        }
    }

    /** Tones as they are, the standard blend, the whole sweep, aspect ratio kept. */
    public static Recipe standard() {
        return new Recipe(
                ToneSettings.none(),
                ToneSettings.none(),
                BlendMethods.standard().name(),
                Optional.empty(),
                CropRule.keepRatio(),
                Optional.empty(),
                List.of(),
                Caption.none());
    }

    public Recipe withReference(String fileName) {
        return new Recipe(tone, finish, blend, span, crop, Optional.of(fileName), overrides, caption);
    }

    public Recipe withCaption(Caption words) {
        return new Recipe(tone, finish, blend, span, crop, reference, overrides, words);
    }

    /**
     * Reads settings. All members may be left out; unknown ones are refused, so that a slip of the pen is not ignored.
     *
     * @throws IllegalArgumentException with a sentence that names the member, what was found and what was expected
     */
    public static Recipe parse(String json) {
        return new RecipeReader(json).recipe();
    }

    /** Every member spelled out, in a fixed order: the text that is hashed, logged and archived. */
    public String toJson() {
        return RecipeWriter.write(this);
    }
}
