package org.stook.imaging.composite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecipeTest {
    @Test
    void nothingSaidIsTheStandard() {
        assertThat(Recipe.parse("{}")).isEqualTo(Recipe.standard());
    }

    @Test
    void readsBackWhatItWrites() {
        Recipe recipe = Recipe.parse("""
                {"tone": {"exposureEv": 0.5, "whiteBalance": [1.1, 1, 0.9], "monochrome": [0.3, 0.6, 0.1]},
                 "finish": {"midTone": 1.2}, "span": {"first": "a.jpg", "last": "b.jpg"},
                 "crop": {"ratio": 1.25, "margin": 8}, "reference": "c.jpg",
                 "overrides": [{"frame": "a.jpg", "outline": [[1, 2], [30.5, 2], [30, 40]], "feather": 3}],
                 "caption": {"title": "Fluorite 7", "rights": "(c) A museum", "pixelSizeMicrometres": 2.125}}""");
        assertThat(Recipe.parse(recipe.toJson())).isEqualTo(recipe);
        assertThat(Recipe.parse(recipe.toJson()).toJson()).isEqualTo(recipe.toJson());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"tone\": {\"exposure\": 1}} | settings.tone.exposure",
                "{\"tone\": {\"exposureEv\": \"much\"}} | settings.tone.exposureEv",
                "{\"tone\": {\"exposureEv\": 9}} | -5",
                "{\"tone\": {\"whiteBalance\": [1, 2]}} | three numbers",
                "{\"blend\": \"magic\"} | pyramid",
                "{\"crop\": {\"margin\": 1.5}} | whole pixels",
                "{\"span\": {\"first\": \"a.jpg\"}} | first and last",
                "{\"overrides\": [{\"frame\": \"a.jpg\", \"outline\": [[1, 2], [3]]}]} | settings.overrides[0].outline[1]",
                "{\"overrides\": [{\"outline\": [[1, 2], [3, 4], [5, 6]]}]} | settings.overrides[0].frame",
                "{\"overrides\": [{\"frame\": \"a.jpg\", \"outline\": [[1, 2]]}]} | 3 to 500 corners",
                "{\"caption\": {\"pixelSizeMicrometres\": 0}} | settings.caption: a pixel measures",
                "[] | an object",
                "{ | no valid JSON"
            })
    void refusesASlipAndSaysWhere(String json, String said) {
        assertThatThrownBy(() -> Recipe.parse(json))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(said);
    }
}
