package org.stook.trail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EntryTest {
    private static final Entry ENTRY = new Entry(
            17,
            "744",
            Instant.parse("2026-03-02T09:00:00.123456Z"),
            "ada \"the\" ü",
            "run.READY-RUNNING",
            "run/4",
            "{\"stack\": 2, \"a\": 1.50}");

    @Test
    void theHashedTextHoldsEveryColumn() {
        assertThat(ENTRY.canonical())
                .isEqualTo(
                        "{\"actor\":\"ada \\\"the\\\" ü\",\"at\":\"2026-03-02T09:00:00.123456Z\",\"body\":{\"a\":1.5,"
                                + "\"stack\":2},\"id\":17,\"kind\":\"run.READY-RUNNING\",\"subject\":\"run/4\",\"xid\":\"744\"}");
        assertThat(Entry.parse(ENTRY.canonical()).leaf()).isEqualTo(ENTRY.leaf());
    }

    /** The quick way to write an entry gives what the canonical form of it is. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "ada",
                "a\"b",
                "a\\b",
                "tab\there",
                "line\nend",
                "\u0001",
                "\u20ac \ud83d\ude00",
                "</script>",
                "\u2028"
            })
    void theHashedTextIsInCanonicalForm(String text) {
        String canonical = new Entry(1, "2", Instant.EPOCH, text, text, text, "{\"b\":[], \"a\":1}").canonical();
        assertThat(Canonical.json(canonical)).isEqualTo(canonical);
        assertThat(Entry.parse(canonical).actor()).isEqualTo(text);
    }

    @Test
    void aChangeOfAnyColumnChangesTheHash() {
        Instant later = ENTRY.at().plusNanos(1000);
        List<Entry> others = List.of(
                new Entry(18, "744", ENTRY.at(), ENTRY.actor(), ENTRY.kind(), ENTRY.subject(), ENTRY.body()),
                new Entry(17, "745", ENTRY.at(), ENTRY.actor(), ENTRY.kind(), ENTRY.subject(), ENTRY.body()),
                new Entry(17, "744", later, ENTRY.actor(), ENTRY.kind(), ENTRY.subject(), ENTRY.body()),
                new Entry(17, "744", ENTRY.at(), "eve", ENTRY.kind(), ENTRY.subject(), ENTRY.body()),
                new Entry(17, "744", ENTRY.at(), ENTRY.actor(), "run.HELD", ENTRY.subject(), ENTRY.body()),
                new Entry(17, "744", ENTRY.at(), ENTRY.actor(), ENTRY.kind(), "run/5", ENTRY.body()),
                new Entry(17, "744", ENTRY.at(), ENTRY.actor(), ENTRY.kind(), ENTRY.subject(), "{\"stack\": 3}"));
        assertThat(others).extracting(Entry::leaf).doesNotContain(ENTRY.leaf()).doesNotHaveDuplicates();
    }

    @Test
    void whatIsNoEntryIsNamed() {
        assertThatThrownBy(() -> Entry.parse("{\"id\":1}")).hasMessageContaining("no audit entry: {\"id\":1}");
    }

    /** Outside check: number samples of RFC 8785, appendix B. */
    @ParameterizedTest
    @CsvSource({
        "333333333.33333329, 333333333.3333333",
        "1E30, 1e+30",
        "4.50, 4.5",
        "2e-3, 0.002",
        "0.000000000000000000000000001, 1e-27",
        "9007199254740993, 9007199254740992",
        "-0, 0"
    })
    void numbersAreWrittenAsTheStandardSays(String given, String canonical) {
        assertThat(Canonical.json("[" + given + "]")).isEqualTo("[" + canonical + "]");
    }

    /** Outside check: the sorting sample of RFC 8785, section 3.2.3. */
    @Test
    void membersAreSortedByTheirUtf16Units() {
        String given =
                "{\"\\u20ac\": \"Euro Sign\",\"\\r\": \"Carriage Return\",\"\\ufb33\": \"Hebrew Letter Dalet With Dagesh\","
                        + "\"1\": \"One\",\"\\ud83d\\ude00\": \"Emoji: Grinning Face\",\"\\u0080\": \"Control\","
                        + "\"\\u00f6\": \"Latin Small Letter O With Diaeresis\"}";
        assertThat(Canonical.json(given).replaceAll("\"[^\"]*\":", ""))
                .isEqualTo(
                        "{\"Carriage Return\",\"One\",\"Control\",\"Latin Small Letter O With Diaeresis\",\"Euro Sign\","
                                + "\"Emoji: Grinning Face\",\"Hebrew Letter Dalet With Dagesh\"}");
    }
}
