package org.stook.comparison.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.comparison.Pictures;
import org.stook.comparison.stack.Fidelity;
import org.stook.comparison.stack.RegistrationError;
import org.stook.comparison.stack.SceneStack;
import org.stook.imaging.frame.Frame;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Truth;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;

/** The reference pipeline as a process on a small generated stack: good enough to be a mark worth passing. */
class ReferenceRunTest {
    @TempDir
    private Path folder;

    @Test
    void aStraightforwardPipelineRegistersWithinAPixelAndBeatsEveryFrame() throws Exception {
        BracketPlan plan = BracketPlan.of(480, 320, 7, 3).withFlicker(0);
        SceneStack stack = new SceneStack("small", Bracket.of(Subjects.shell(1), plan), FrameFormat.JPEG);
        Path frames = stack.frames(folder);

        Outcome outcome = new Pipelines(folder.resolve("composites"), 2).reference(frames);

        Truth truth = stack.bracket().truthIn(stack.rank(outcome.referenceFile()));
        Frame composite = Pictures.read(outcome.composite());
        Fidelity fused = Fidelity.of(composite, outcome.commonArea(), truth, outcome.commonArea());
        Frame middle = Fidelity.cut(Pictures.read(frames.resolve(outcome.referenceFile())), outcome.commonArea());
        Fidelity single = Fidelity.of(middle, outcome.commonArea(), truth, outcome.commonArea());
        assertThat(RegistrationError.of(outcome.frames(), stack, truth).rms()).isLessThan(1);
        assertThat(fused.subject()).isGreaterThan(single.subject() + 1);
        assertThat(outcome.seconds()).containsKeys("read", "register", "warp", "fuse", "write");
        assertThat(outcome.usage().wallSeconds()).isPositive();
        assertThat(outcome.usage().cpuSeconds()).isPositive();
        assertThat(outcome.usage().peakMebibytes()).isGreaterThan(20);
    }

    @Test
    void aFailedRunSaysWhatItWrote() throws IOException {
        Path empty = Files.createDirectory(folder.resolve("empty"));
        Files.writeString(empty.resolve("broken.jpg"), "no picture");

        assertThatThrownBy(() -> new Pipelines(folder, 1).reference(empty))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("broken.jpg");
    }
}
