package org.stook.app.sorting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class LabelTest {
    private static final Map<String, Pattern> ROLES = new LinkedHashMap<>();

    static {
        ROLES.put("subject", Pattern.compile("^(HC-[0-9]+)"));
        ROLES.put("view", Pattern.compile("/([a-z]+)$"));
        ROLES.put("drawer", Pattern.compile("^DRAWER-[0-9]+$"));
    }

    @Test
    void severalCodesGetTheirRolesByPattern() {
        Label label = label("HC-12/dorsal", "DRAWER-4");
        assertThat(label.subject()).isEqualTo("HC-12");
        assertThat(label.view()).isEqualTo("dorsal");
        assertThat(label.question()).isNull();
        assertThat(label.codes()).extracting(Label.Read::role).containsExactly("subject", "view", "drawer");
    }

    @Test
    void aCodeThatFitsNoPatternNamesNothing() {
        Label label = label("4006381333931");
        assertThat(label.subject()).isNull();
        assertThat(label.question()).contains("4006381333931", "no subject by this station's patterns");
    }

    @Test
    void twoSubjectsAreAskedFor() {
        assertThat(label("HC-1", "HC-2").question()).contains("HC-1, HC-2");
    }

    @Test
    void withoutPatternsEveryCodeIsASubject() {
        assertThat(Label.of(List.of(slate("anything")), Map.of(), true).subject())
                .isEqualTo("anything");
    }

    private static Label label(String... texts) {
        return Label.of(List.of(slate(texts)), ROLES, true);
    }

    private static Shot slate(String... texts) {
        return new Shot(
                1,
                "1.jpg",
                LocalDateTime.of(2026, 3, 2, 9, 0),
                new Shot.Setting("", "", ""),
                new Shot.Sight(
                        new float[0],
                        new float[0],
                        Arrays.stream(texts).map(t -> new Shot.Code("QR", t)).toList(),
                        0,
                        ""),
                false);
    }
}
