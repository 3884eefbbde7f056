package org.stook.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NamePatternTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Fluorite (blue) 7 | Fluorite-blue-7/9-ab",
                "Gr\u00f6\u00dfe \u00d8 4 | Grosse-O-4/9-ab",
                "../../etc/passwd | etc-passwd/9-ab",
                "\u86cd\u77f3 | x/9-ab",
                "CON. | CON/9-ab"
            })
    void aSubjectBecomesAPlainName(String subject, String name) {
        assertThat(NamePattern.USUAL.fill(Map.of("subject", subject, "run", "9", "hash", "ab")))
                .isEqualTo(name);
    }

    @Test
    void theWordsOfTheStationsPatternAreFilledIn() {
        NamePattern pattern = NamePattern.of("{station}/2026/{subject}_{view}_{run}-{hash}");
        Map<String, String> words = Map.of("station", "north", "subject", "Fluorite 7", "run", "9", "hash", "ab");
        assertThat(pattern.fill(words)).isEqualTo("north/2026/Fluorite-7_9-ab");
        Map<String, String> withView = new java.util.HashMap<>(words);
        withView.put("view", "left side");
        assertThat(pattern.fill(withView)).isEqualTo("north/2026/Fluorite-7_left-side_9-ab");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{subject}",
                "{run}-{hash}/{subject}",
                "{run}-{hash}-{colour}",
                "/{run}-{hash}",
                "../{run}-{hash}",
                "a b/{run}-{hash}",
                ""
            })
    void refusesWhatWouldMakeABadName(String pattern) {
        assertThatThrownBy(() -> NamePattern.of(pattern))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("expected");
        assertThat(NamePattern.orUsual(pattern)).isEqualTo(NamePattern.USUAL);
    }
}
