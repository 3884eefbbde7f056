package org.stook.imaging.composite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.composite.FrameRecord.Role;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Samples;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.file.Mishaps;

/** The whole job against generated stacks whose truth is known exactly. */
class CompositionTest {
    private static final int WIDTH = 480;
    private static final int HEIGHT = 320;

    @TempDir
    static Path home;

    private static TruthStack stack;
    private static ComposeReport report;
    private static Path master;

    @BeforeAll
    static void composeOnce() throws Exception {
        stack = TruthStack.write(
                Files.createDirectory(home.resolve("frames")),
                "mineral",
                BracketPlan.of(WIDTH, HEIGHT, 7, 5).withReference(3));
        master = home.resolve("composite.tif");
        report = compose(stack.files(), Recipe.standard().withReference(stack.nameOf(3)), 2, master);
    }

    @Test
    void placesEveryFrameToHalfAPixelAtTheWorstCorner() {
        double worst = 0;
        for (int i = 0; i < stack.frames(); i++) {
            String name = stack.nameOf(i);
            FrameRecord frame = report.frames().stream()
                    .filter(f -> f.file().equals(name))
                    .findFirst()
                    .orElseThrow();
            worst = Math.max(
                    worst,
                    worstCorner(
                            frame.placement().orElseThrow(),
                            Placement.of(stack.truth().placement(i))));
        }
        assertThat(worst).isLessThan(0.5);
    }

    @Test
    void showsTheSubjectAsItIs() throws Exception {
        assertThat(psnrOnSubject(FrameReaders.read(master), report.commonArea()))
                .isGreaterThan(36);
    }

    @Test
    void keepsTheAspectRatioAndSixteenBits() throws Exception {
        Samples made = FrameReaders.read(master);
        assertThat(made.bitsPerSample()).isEqualTo(16);
        assertThat((double) made.width() / made.height()).isBetween(1.49, 1.51);
        assertThat(FrameReaders.header(master).colour().profile()).isPresent();
        assertThat(FrameReaders.header(master).pixelsPerInch()).isPresent();
    }

    @Test
    void evensOutFlickerToTheReferenceFrame() {
        for (int i = 0; i < stack.frames(); i++) {
            String name = stack.nameOf(i);
            double gain = -Math.log(stack.truth().gain(i)) / Math.log(2);
            double found = report.frames().stream()
                    .filter(f -> f.file().equals(name))
                    .findFirst()
                    .orElseThrow()
                    .exposureEv();
            assertThat(found).isBetween(gain - 0.02, gain + 0.02);
        }
    }

    @Test
    void isTheSameToTheByteForAnyThreadsAndAnyOrderOfFiles() throws Exception {
        for (int threads : new int[] {1, 7}) {
            List<Path> files = new ArrayList<>(stack.files());
            Collections.reverse(files);
            Path again = home.resolve("again-" + threads + ".tif");
            compose(files, Recipe.standard().withReference(stack.nameOf(3)), threads, again);
            assertThat(again).hasSameBinaryContentAs(master);
        }
    }

    @Test
    void placementsOfAnEarlierCompositionGiveTheSameBytesWithoutRegistration() throws Exception {
        Recipe recipe = Recipe.standard().withReference(stack.nameOf(3));
        List<String> stages = new ArrayList<>();
        Path again = home.resolve("placed.tif");
        String saved;
        try (Composition first = new Composition(new ComposeOrder(stack.files(), recipe, 2), Progress.silent())) {
            first.survey();
            first.register();
            saved = first.placements();
        }
        try (Composition second = new Composition(
                new ComposeOrder(stack.files(), recipe, 2), (stage, part) -> stages.add(stage + part))) {
            second.survey();
            for (String bad : List.of(
                    "",
                    "{}",
                    saved.replace("\"placed\":[{", "\"placed\":[{},{"),
                    saved.replace("\"reference\":3", "\"reference\":2"))) {
                assertThat(second.register(bad)).as(bad).isFalse();
            }
            assertThat(second.register(saved)).isTrue();
            second.blend();
            second.finish(again, Optional.empty());
        }
        assertThat(again).hasSameBinaryContentAs(master);
        assertThat(stages.stream().filter(s -> s.startsWith(Composition.REGISTER)))
                .as("only its end is reported")
                .containsExactly("register1.0");
    }

    @Test
    void setsAsideWhatIsNoFrameAndNamesTheReason(@TempDir Path messy) throws Exception {
        for (Path file : stack.files()) Files.copy(file, messy.resolve(file.getFileName()));
        Path truncated = messy.resolve("cut.jpg");
        Files.copy(stack.files().get(2), truncated);
        Mishaps.truncate(truncated, 0.6);
        Mishaps.empty(messy.resolve("empty.jpg"));
        Mishaps.notAnImage(messy.resolve("notes.jpg"));
        Mishaps.wrongSize(stack.writer(), 1, messy); // takes the place of a good frame
        Map<Path, byte[]> before = contents(messy);

        ComposeReport made = compose(List.copyOf(before.keySet()), Recipe.standard(), 2, home.resolve("messy.tif"));

        List<FrameRecord> strays =
                made.frames().stream().filter(f -> f.role() == Role.STRAY).toList();
        assertThat(strays).hasSize(4).allSatisfy(s -> assertThat(s.reason()).contains(s.file()));
        assertThat(made.frames()).hasSize(stack.frames() + 3);
        assertThat(contents(messy)).usingRecursiveComparison().isEqualTo(before);
    }

    @Test
    void blendsOnlyTheSpanThatIsAskedFor() throws Exception {
        Recipe span = Recipe.parse(
                "{\"span\": {\"first\": \"%s\", \"last\": \"%s\"}}".formatted(stack.nameOf(2), stack.nameOf(4)));
        ComposeReport made = compose(stack.files(), span, 2, home.resolve("span.tif"));
        assertThat(made.frames().stream().filter(f -> f.role() == Role.OUTSIDE_SPAN))
                .hasSize(stack.frames() - 3);
    }

    @Test
    void saysWhyNothingCanBeComposed(@TempDir Path empty) throws Exception {
        Files.writeString(empty.resolve("notes.jpg"), "no picture");
        List<Path> files = List.of(empty.resolve("notes.jpg"));
        assertThatThrownBy(() -> compose(files, Recipe.standard(), 1, home.resolve("none.tif")))
                .isInstanceOf(CannotCompose.class)
                .hasMessageContaining("notes.jpg")
                .extracting(e -> ((CannotCompose) e).code())
                .isEqualTo("no-frames");
        assertThatThrownBy(() -> compose(
                        stack.files(), Recipe.standard().withReference("gone.jpg"), 1, home.resolve("none.tif")))
                .isInstanceOf(CannotCompose.class)
                .hasMessageContaining("gone.jpg");
    }

    @Test
    void oneFrameAloneMakesAComposite() throws Exception {
        ComposeReport made = compose(stack.files().subList(0, 1), Recipe.standard(), 2, home.resolve("one.tif"));
        assertThat(made.frames()).hasSize(1);
    }

    @Test
    void stopsWhenProgressThrows() throws Exception {
        try (Composition composition =
                new Composition(new ComposeOrder(stack.files(), Recipe.standard(), 2), (stage, fraction) -> {
                    if (stage.equals(Composition.BLEND)) throw new IllegalStateException("cancelled");
                })) {
            composition.survey();
            composition.register();
            assertThatThrownBy(composition::blend).hasMessage("cancelled");
        }
    }

    private static ComposeReport compose(List<Path> files, Recipe recipe, int threads, Path out) throws Exception {
        try (Composition composition = new Composition(new ComposeOrder(files, recipe, threads), Progress.silent())) {
            composition.survey();
            composition.register();
            composition.blend();
            composition.finish(out, Optional.empty());
            composition.score();
            return composition.report();
        }
    }

    private static double worstCorner(Placement found, Placement truth) {
        double worst = 0;
        for (int corner = 0; corner < 4; corner++) {
            int x = (corner & 1) * (WIDTH - 1);
            int y = (corner >> 1) * (HEIGHT - 1);
            worst = Math.max(worst, Math.hypot(found.x(x, y) - truth.x(x, y), found.y(x, y) - truth.y(x, y)));
        }
        return worst;
    }

    /** Peak signal-to-noise ratio in dB over the subject's pixels inside the common area, encoded values. */
    private static double psnrOnSubject(Samples made, Area area) {
        Picture truth = stack.truth().encoded();
        boolean[] subject = stack.truth().subject();
        double sum = 0;
        long count = 0;
        for (int y = 0; y < area.height(); y++) {
            for (int x = 0; x < area.width(); x++) {
                int at = (y + area.y()) * WIDTH + x + area.x();
                if (!subject[at]) continue;
                for (int c = 0; c < 3; c++) {
                    double error = made.code(x, y, c) / 65535.0 - truth.planes()[c][at];
                    sum += error * error;
                    count++;
                }
            }
        }
        return -10 * Math.log10(sum / count);
    }

    private static Map<Path, byte[]> contents(Path folder) throws Exception {
        Map<Path, byte[]> contents = new LinkedHashMap<>();
        try (var entries = Files.list(folder)) {
            for (Path file : entries.sorted().toList()) contents.put(file, Files.readAllBytes(file));
        }
        return contents;
    }
}
