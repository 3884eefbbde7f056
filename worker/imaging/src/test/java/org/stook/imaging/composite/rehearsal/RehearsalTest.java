package org.stook.imaging.composite.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.imaging.composite.Composition;

class RehearsalTest {
    private final Rehearsal small = new Rehearsal(new MadeUpStack(400, 300, 4), 1);

    @TempDir
    Path home;

    @Test
    void goesThroughAllStagesAndLeavesNothingBehind() throws Exception {
        Set<String> stages = new LinkedHashSet<>();
        small.in(home, 1, (stage, part) -> stages.add(stage));
        assertThat(stages)
                .containsExactly(
                        Composition.SURVEY,
                        Composition.REGISTER,
                        Composition.BLEND,
                        Composition.FINISH,
                        Composition.SCORE);
        assertThat(home).isEmptyDirectory();
    }

    @Test
    void leavesNothingBehindWhenItIsEnded() {
        assertThatThrownBy(() -> small.in(home, 1, (stage, part) -> {
                    if (stage.equals(Composition.BLEND)) throw new IllegalStateException("work came");
                }))
                .hasMessage("work came");
        assertThat(home).isEmptyDirectory();
    }
}
