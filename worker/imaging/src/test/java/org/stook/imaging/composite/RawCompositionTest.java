package org.stook.imaging.composite;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.raw.NeedsLibRaw;
import org.stook.imaging.frame.Samples;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.file.Mishaps;
import org.stook.scenes.subject.Subjects;

/** The whole job on raw frames, beside the same frames as a camera without filters would give them. */
class RawCompositionTest {
    private static final Bracket BRACKET =
            Bracket.of(Subjects.mineral(3), BracketPlan.of(240, 160, 4, 3).withReference(1));

    @TempDir
    private Path home;

    @Test
    void compositeOfRawFramesIsThatOfDevelopedOnes() throws Exception {
        NeedsLibRaw.orSaySo();
        ComposeReport raw = composed(FrameFormat.DNG_14_JPEG, home.resolve("raw.tif"));
        ComposeReport developed = composed(FrameFormat.TIFF_16, home.resolve("tiff.tif"));
        assertThat(raw.frames())
                .filteredOn(frame -> frame.role() == FrameRecord.Role.STRAY)
                .extracting(FrameRecord::reason)
                .singleElement()
                .asString()
                .startsWith("HC_0004.dng: found a TIFF of ")
                .endsWith("set aside.");
        assertThat(raw.commonArea()).isEqualTo(developed.commonArea());
        assertThat(psnr(home.resolve("raw.tif"), home.resolve("tiff.tif"))).isGreaterThan(36);
    }

    private ComposeReport composed(FrameFormat format, Path out) throws Exception {
        Path folder = home.resolve(format.word());
        BracketWriter writer =
                new BracketWriter(BRACKET, format, Camera.USUAL, OffsetDateTime.parse("2026-03-02T10:15:30+01:00"));
        writer.writeFrames(folder);
        Mishaps.truncate(folder.resolve(writer.fileName(3)), 0.9);
        List<Path> files;
        try (var entries = Files.list(folder)) {
            files = entries.sorted().toList();
        }
        Recipe recipe = Recipe.standard().withReference(writer.fileName(1));
        try (Composition composition = new Composition(new ComposeOrder(files, recipe, 2), Progress.silent())) {
            composition.survey();
            composition.register();
            composition.blend();
            composition.finish(out, Optional.empty());
            composition.score();
            return composition.report();
        }
    }

    private static double psnr(Path one, Path two) throws Exception {
        Samples a = FrameReaders.read(one);
        Samples b = FrameReaders.read(two);
        double sum = 0;
        int edge = 4;
        for (int y = edge; y < a.height() - edge; y++) {
            for (int x = edge; x < a.width() - edge; x++) {
                for (int c = 0; c < 3; c++) sum += Math.pow((a.code(x, y, c) - b.code(x, y, c)) / 65535.0, 2);
            }
        }
        return -10 * Math.log10(sum / (3.0 * (a.width() - 2 * edge) * (a.height() - 2 * edge)));
    }
}
