package org.stook.imaging.composite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.imaging.composite.FrameRecord.Role;

/** The whole job on real frames that others published. */
@Tag("published-data")
class PublishedStacksTest {
    @TempDir
    Path home;

    /**
     * "balls" of github.com/wcy199705/DfFintheWild (commit 8ba434f5, MIT licence): focus runs from far to near and the
     * lens breathes by 6 % over the sweep (measured on the frames before this code existed).
     */
    @Test
    void followsTheBreathingOfARealLens() throws Exception {
        ComposeReport made = compose("balls_10f");
        List<FrameRecord> sweep = blended(made);
        assertThat(sweep).extracting(FrameRecord::file).isSorted().hasSize(10);
        double breathing = scale(sweep.get(9)) / scale(sweep.get(0)) - 1;
        assertThat(breathing).isCloseTo(0.06, within(0.01));
        assertThat(made.score().parts().get(0).value()).isLessThan(10);
    }

    /**
     * A light-field refocus stack of github.com/behnam/python-lfp-reader (commit d1a50810, GPL-3.0) with frames numbered
     * regardless of focus; the true focus position of each stands in focus_lambda.csv beside them.
     */
    @Test
    void findsTheOrderOfFocusOfShuffledFrames() throws Exception {
        List<String> byFocus = Files.readAllLines(folder("newspaper_12f").resolve("focus_lambda.csv")).stream()
                .skip(1)
                .map(line -> line.split(",", 2))
                .sorted(Comparator.comparingDouble(cells -> -Double.parseDouble(cells[1])))
                .map(cells -> cells[0])
                .toList();
        List<String> found = blended(compose("newspaper_12f")).stream()
                .map(FrameRecord::file)
                .toList();
        // The images alone do not tell which end is near, so either direction is right.
        if (!found.get(0).equals(byFocus.get(0))) found = reversed(found);
        assertThat(found).isEqualTo(byFocus);
    }

    private ComposeReport compose(String set) throws Exception {
        List<Path> files;
        try (Stream<Path> all = Files.list(folder(set))) {
            files = all.filter(file -> file.toString().endsWith(".jpg")).toList();
        }
        try (Composition composition =
                new Composition(new ComposeOrder(files, Recipe.standard(), 2), Progress.silent())) {
            composition.survey();
            composition.register();
            composition.blend();
            composition.finish(home.resolve(set + ".tif"), Optional.empty());
            composition.score();
            return composition.report();
        }
    }

    private static List<FrameRecord> blended(ComposeReport made) {
        return made.frames().stream().filter(f -> f.role() != Role.STRAY).toList();
    }

    private static double scale(FrameRecord frame) {
        return frame.placement().orElseThrow().scaleAt(640, 360);
    }

    private static List<String> reversed(List<String> names) {
        List<String> copy = new java.util.ArrayList<>(names);
        java.util.Collections.reverse(copy);
        return copy;
    }

    private static Path folder(String set) {
        Path folder = Path.of(System.getProperty("stook.published-data", "published-data-not-set"), set);
        if (!Files.isDirectory(folder)) {
            String loud = "PUBLISHED DATA ABSENT: " + folder + " does not exist; this check did not run";
            System.err.println(loud);
            Assumptions.abort(loud);
        }
        return folder;
    }
}
