package org.stook.imaging.composite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Samples;
import org.stook.scenes.bracket.BracketPlan;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A region taken from a named frame, and what a composition is reviewed with. */
class OverrideTest {
    private static final int LEFT = 120;
    private static final int TOP = 70;
    private static final int SIDE = 60;

    @TempDir
    static Path home;

    private static TruthStack stack;

    private static ComposeReport report;
    private static ComposeReport overridden;

    @BeforeAll
    static void composePlain() throws Exception {
        stack = TruthStack.write(
                Files.createDirectory(home.resolve("frames")),
                "shell",
                BracketPlan.of(360, 240, 5, 5).withReference(2));
        report = compose("", home.resolve("plain.tif"), 2);
        overridden = compose(region(stack.nameOf(0), SIDE), home.resolve("part.tif"), 1);
    }

    @Test
    void theRegionIsTheNamedFramesAndTheRestIsUntouched() throws Exception {
        compose(region(stack.nameOf(0), 1000), home.resolve("whole.tif"), 2);
        Samples plain = FrameReaders.read(home.resolve("plain.tif"));
        Samples frame = FrameReaders.read(home.resolve("whole.tif"));
        Samples made = FrameReaders.read(home.resolve("part.tif"));
        Area area = report.commonArea();
        for (int y = 0; y < made.height(); y += 3) {
            for (int x = 0; x < made.width(); x += 3) {
                boolean inside = within(x + area.x() - LEFT, -6) && within(y + area.y() - TOP, -6);
                boolean outside = !within(x + area.x() - LEFT, 6) || !within(y + area.y() - TOP, 6);
                // The larger region is drawn from another corner, which may round differently.
                if (inside) assertThat(made.code(x, y, 1)).isCloseTo(frame.code(x, y, 1), Assertions.within(16));
                if (outside) assertThat(made.code(x, y, 1)).isEqualTo(plain.code(x, y, 1));
            }
        }
    }

    private static boolean within(int offset, int slack) {
        return offset >= -slack && offset <= SIDE + slack;
    }

    @Test
    void theBytesDoNotDependOnTheThreads() throws Exception {
        ComposeReport again = compose(region(stack.nameOf(0), SIDE), home.resolve("five.tif"), 5);
        assertThat(again.resultSha256()).isEqualTo(overridden.resultSha256()).isNotEqualTo(report.resultSha256());
    }

    @Test
    void aFrameOrPlaceThatIsNotThereIsNamed() {
        assertThatThrownBy(() -> compose(region("gone.jpg", SIDE), home.resolve("none.tif"), 1))
                .isInstanceOf(CannotCompose.class)
                .hasMessageContaining("gone.jpg");
        String far = "{\"frame\": \"%s\", \"outline\": [[9000, 0], [9100, 0], [9100, 90]]}".formatted(stack.nameOf(1));
        assertThatThrownBy(() -> compose(far, home.resolve("none.tif"), 1))
                .isInstanceOf(CannotCompose.class)
                .hasMessageContaining("outside the common area");
    }

    @Test
    void whatTheReviewNeedsLiesInItsFolders() throws Exception {
        Path review = view(home.resolve("part.tif"));
        JsonNode contents = JsonMapper.builder()
                .build()
                .readTree(review.resolve("review.json").toFile());
        assertThat(contents.path("proxies").path("frames").size()).isEqualTo(5);
        assertThat(home.resolve("part.tif.tiles/info.json")).exists();
        BufferedImage source = ImageIO.read(review.resolve("source.png").toFile());
        BufferedImage doubt = ImageIO.read(review.resolve("doubt.png").toFile());
        int x = LEFT + SIDE / 2 - report.commonArea().x();
        int y = TOP + SIDE / 2 - report.commonArea().y();
        assertThat(source.getRaster().getSample(x, y, 0)).isZero();
        assertThat(doubt.getRaster().getSample(x, y, 0) & 8).as("overridden").isEqualTo(8);
        assertThat(doubt.getRaster().getSample(5, 5, 0) & 8).isZero();
        BufferedImage proxy = ImageIO.read(review.resolve("frames/002.jpg").toFile());
        assertThat(proxy.getWidth()).isEqualTo(report.commonArea().width());
        assertThat(proxy.getRGB(x, y) >> 8 & 0xFF).isBetween(0, 255);
    }

    @Test
    void theReportSaysWhichFrameIsSharpWhere() {
        FocusTable focus = report.focus();
        assertThat(focus.frames()).hasSize(5);
        assertThat(focus.frames().stream()
                        .mapToDouble(FocusTable.Row::sharpestPercent)
                        .sum())
                .isBetween(99.0, 101.0);
        assertThat(focus.frames().get(0).sharpness()).hasSize(focus.columns() * focus.rows());
        assertThat(focus.frames().get(4).position())
                .isGreaterThan(focus.frames().get(0).position());
        JsonNode json = JsonMapper.builder().build().readTree(report.toJson());
        assertThat(json.path("focus").path("frames").size()).isEqualTo(5);
        assertThat(json.path("settings").path("overrides").size()).isZero();
    }

    private static String region(String frame, int side) {
        int from = side > SIDE ? -100 : 0;
        return "{\"frame\": \"%s\", \"outline\": [[%d, %d], [%d, %d], [%d, %d], [%d, %d]]}"
                .formatted(
                        frame,
                        LEFT + 2 * from,
                        TOP + 2 * from,
                        LEFT + side,
                        TOP + 2 * from,
                        LEFT + side,
                        TOP + side,
                        LEFT + 2 * from,
                        TOP + side);
    }

    private static Recipe recipe(String overrides) {
        return Recipe.parse("{\"reference\": \"%s\", \"overrides\": [%s]}".formatted(stack.nameOf(2), overrides));
    }

    private static ComposeReport compose(String overrides, Path out, int threads) throws Exception {
        try (Composition composition =
                new Composition(new ComposeOrder(stack.files(), recipe(overrides), threads), Progress.silent())) {
            composition.keepProxies(view(out));
            composition.survey();
            composition.register();
            composition.blend();
            composition.finish(out, Optional.empty());
            composition.score();
            composition.writeView(out.resolveSibling(out.getFileName() + ".tiles"), view(out));
            return composition.report();
        }
    }

    private static Path view(Path out) {
        return out.resolveSibling(out.getFileName() + ".review");
    }
}
