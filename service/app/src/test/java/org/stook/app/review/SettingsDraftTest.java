package org.stook.app.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.stook.app.station.CanonicalJson;
import org.stook.imaging.composite.Recipe;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class SettingsDraftTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Test
    void whatIsAsUsualIsLeftOutSoThatTheHashIsThatOfNothing() {
        SettingsDraft draft = SettingsDraft.of(read("{}"));
        assertThat(draft.over(read("{}"))).hasToString("{}");
        assertThat(draft.over(read("{\"blend\": \"pyramid\", \"tone\": {\"contrast\": 0.5}}")))
                .hasToString("{}");
    }

    @Test
    void settingsComeBackFromTheFieldsThatShowThem() {
        JsonNode settings = read("""
                {"blend": "pyramid", "crop": {"margin": 8, "ratio": 1.25}, "finish": {"midTone": 1.1},
                 "overrides": [{"feather": 3, "frame": "a.jpg", "outline": [[1, 2], [30.5, 2], [30, 40]]}],
                 "reference": "c.jpg", "span": {"first": "a.jpg", "last": "b.jpg"},
                 "tone": {"exposureEv": 0.5, "monochrome": [0.3, 0.6, 0.1], "whiteBalance": [1.1, 1, 0.9]}}""");
        JsonNode again = SettingsDraft.of(settings).over(settings);
        assertThat(CanonicalJson.of(again)).isEqualTo(CanonicalJson.of(settings));
        assertThat(Recipe.parse(again.toString())).isEqualTo(Recipe.parse(settings.toString()));
    }

    @Test
    void aSlipOfThePenReachesTheReaderThatNamesIt() {
        SettingsDraft draft = draft("plenty", "[]");
        assertThatThrownBy(() -> Recipe.parse(draft.over(read("{}")).toString()))
                .hasMessage("settings.tone.exposureEv: found \"plenty\", expected a number");
        assertThatThrownBy(() -> draft("1", "[{").over(read("{}"))).hasMessageContaining("settings.overrides");
    }

    @Test
    void aFirstFrameWithoutALastIsRefused() {
        SettingsDraft whole = draft("", "");
        SettingsDraft half = new SettingsDraft("", "", "", "", "", "", "", "", "", "", "", "a.jpg", "", "", "", "", "");
        assertThat(whole.over(read("{}"))).hasToString("{}");
        assertThatThrownBy(() -> Recipe.parse(half.over(read("{}")).toString())).hasMessageContaining("first and last");
    }

    private static SettingsDraft draft(String exposure, String overrides) {
        return new SettingsDraft(exposure, "", "", "", "", "", "", "", "", "", "", "", "", "", "", "", overrides);
    }

    private static JsonNode read(String json) {
        return MAPPER.readTree(json);
    }
}
