package org.stook.comparison.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.imaging.frame.Area;

class RunsTest {
    @TempDir
    private Path folder;

    @Test
    void oneSlowRunDoesNotMoveTheFigures() {
        Runs runs = new Runs();
        for (double seconds : List.of(2.0, 9.0, 3.0)) runs.add(taking(seconds));

        assertThat(runs.wall()).isEqualTo(3);
        assertThat(runs.cores()).isEqualTo(1.5);
        assertThat(runs.stage("decode")).isEqualTo(1.5);
    }

    @Test
    void withoutARunThereIsNoFigure() {
        assertThat(new Runs().wall()).isNaN();
    }

    /** The child tells its collections by the unified logging of the virtual machine, JEP 158 and 271. */
    @Test
    void collectionsOfAChildAreCounted() throws Exception {
        Path log = folder.resolve("gc");
        Files.writeString(log, """
                [0.004s][info][gc] Using Serial
                [0.083s][info][gc] GC(0) Pause Young (Normal) (G1 Evacuation Pause) 24M->4M(256M) 2.345ms
                [0.105s][info][gc] GC(1) Concurrent Mark Cycle 8.000ms
                [0.183s][info][gc] GC(2) Pause Full (System.gc()) 24M->4M(256M) 7.655ms
                """);

        Usage usage = MeasuredProcess.run(List.of("true"), folder.resolve("log"), log);

        assertThat(usage.collectorSeconds()).isCloseTo(0.010, within(1e-9));
    }

    @Test
    void remarksOfAReportComeWithoutTheFileNameInFront() throws IOException {
        Path report = folder.resolve("report.json");
        Files.writeString(report, """
                {"commonArea": {"x": 0, "y": 0, "width": 9, "height": 9}, "misplaced": ["a.jpg", "b.jpg"], "frames": [
                {"file": "a.jpg", "role": "blended", "reason": "a.jpg: bumped", "placement": [1,0,0,0,1,0,0,0,1]},
                {"file": "b.jpg", "role": "reference", "reason": "", "placement": [1,0,0,0,1,0,0,0,1]}]}""");

        Outcome outcome = Outcome.read(folder, report, new Usage(1, 1, 1, 0));

        assertThat(outcome.remarks()).containsExactly(Map.entry("a.jpg", "bumped"), Map.entry("b.jpg", "misplaced"));
    }

    private Outcome taking(double seconds) {
        return new Outcome(
                folder,
                Area.whole(1, 1),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of("decode", seconds / 2),
                new Usage(seconds, seconds * 1.5, 100, 0));
    }
}
