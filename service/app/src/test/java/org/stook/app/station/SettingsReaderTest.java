package org.stook.app.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.orders.NamePattern;

class SettingsReaderTest {
    private static final StationSettings.Patience USUAL =
            new StationSettings.Patience(Duration.ofSeconds(2), Duration.ofSeconds(10), Duration.ofSeconds(60));
    private final SettingsReader reader = new SettingsReader(USUAL);

    @Test
    void whatIsLeftOutIsAsUsual() {
        StationSettings settings = reader.read("{}");
        assertThat(settings.patience()).isEqualTo(USUAL);
        assertThat(settings.splitting().slates()).isEqualTo(StationSettings.Slates.NONE);
        assertThat(settings.recipe()).isEqualTo("{}");
        assertThat(settings.priority()).isEqualTo(50);
        assertThat(settings.names()).isEqualTo(NamePattern.USUAL);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {"splittin": {}}|splittin: found no known name, expected one of splitting, roles, patience, recipe, priority, names, clocks
            {"splitting": {"slates": "always"}}|splitting.slates: found "always", expected one of none, first, last
            {"splitting": {"gapSeconds": 0}}|splitting.gapSeconds: found 0, expected a number from 1 to 86400
            {"splitting": {"framing": "yes"}}|splitting.framing: found "yes", expected true or false
            {"roles": {"subject": "HC-("}}|roles.subject: found 'HC-(', expected a pattern (Unclosed group)
            {"priority": 101}|priority: found 101, expected a number from 0 to 100
            {"patience": {"quietSeconds": "ten"}}|patience.quietSeconds: found "ten", expected a number from 1 to 86400
            {"names": "{subject}"}|names: found '{subject}', expected {run} and {hash} in its last part, so that no name comes twice
            {"clocks": {"4500117": "an hour"}}|clocks.4500117: found "an hour", expected a number from -1000000000 to 1000000000
            []|settings: found [], expected an object
            """)
    void aWrongValueIsRefusedWithWhatWasFoundAndExpected(String json, String sentence) {
        assertThatThrownBy(() -> reader.read(json))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(sentence);
    }

    @Test
    void theWorkersOwnReaderJudgesTheRecipe() {
        assertThatThrownBy(() -> reader.read("{\"recipe\": {\"tone\": {\"contrast\": \"much\"}}}"))
                .hasMessageStartingWith("recipe, settings.tone.contrast: found");
    }

    /** Outside check: RFC 8785, section 3.2.3, sorts members by UTF-16 code units; its example's number 4.50 is written 4.5. */
    @Test
    void recipesAreKeptInCanonicalForm() {
        assertThat(reader.read(
                                "{\"recipe\": {\"tone\": {\"saturation\": 1.0, \"exposureEv\": 4.50}, \"blend\": \"region\"}}")
                        .recipe())
                .isEqualTo("{\"blend\":\"region\",\"tone\":{\"exposureEv\":4.5,\"saturation\":1}}");
    }
}
