package org.stook.scenes.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.subject.Subjects;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class BracketWriterTest {
    private static final Bracket BRACKET = Bracket.of(Subjects.mineral(1), BracketPlan.of(96, 64, 3, 1));

    @TempDir
    private Path folder;

    private static BracketWriter writer() {
        return new BracketWriter(
                BRACKET, FrameFormat.TIFF_16, Camera.USUAL, OffsetDateTime.parse("2026-03-02T09:00:00+01:00"));
    }

    @Test
    void filesHoldTheEncodedFrame() throws IOException {
        BufferedImage image = ImageIO.read(writer().writeFrame(1, folder).toFile());
        Picture wanted = BRACKET.encoded(1);
        int[] pixel = image.getRaster().getPixel(40, 30, new int[3]);
        for (int c = 0; c < 3; c++) assertThat(pixel[c] / 65535.0).isCloseTo(wanted.at(c, 40, 30), within(1e-5));
    }

    @Test
    void otherOrderRepeatsAndSwapsPicturesButNotNamesOrTimes() {
        BracketWriter usual = writer();
        BracketWriter other = usual.withOrder(0, 2, 1, 2);
        assertThat(other.files()).isEqualTo(4);
        assertThat(other.fileName(1)).isEqualTo("HC_0002.tif");
        assertThat(other.capture(1)).isEqualTo(usual.capture(1));
        assertThat(other.frameOf(3)).isEqualTo(2);
        assertThat(other.frame(0)).isEqualTo(usual.frame(0));
    }

    @Test
    void truthIsWrittenWithPlacementsAndMasks() throws IOException {
        writer().writeTruth(folder);
        JsonNode json =
                JsonMapper.shared().readTree(folder.resolve("truth.json").toFile());
        assertThat(json.get("frames")).hasSize(3);
        assertThat(json.get("reference").asInt()).isEqualTo(1);
        double[] placement = BRACKET.pose(2).placement();
        for (int k = 0; k < 9; k++) {
            assertThat(json.get("frames").get(2).get("placement").get(k).asDouble())
                    .isEqualTo(placement[k]);
        }
        BufferedImage depth = ImageIO.read(folder.resolve("depth.png").toFile());
        float position = BRACKET.truth().position()[30 * 96 + 40];
        assertThat(depth.getRaster().getSample(40, 30, 0) / 256.0).isCloseTo(position, within(0.005));
        for (String name : new String[] {"truth.tif", "truth.png", "subject.png", "silhouette.png"}) {
            assertThat(ImageIO.read(folder.resolve(name).toFile()).getWidth()).isEqualTo(96);
        }
    }

    @Test
    void droppedFileGrowsStepByStepUntilItIsComplete() throws IOException {
        CameraDrop drop = CameraDrop.of(writer(), 0, folder, 4);
        long before = 0;
        for (int step = 0; step < 4; step++) {
            assertThat(drop.complete()).isFalse();
            assertThat(drop.step()).isEqualTo(step == 3);
            assertThat(Files.size(drop.file())).isGreaterThan(before);
            before = Files.size(drop.file());
        }
        assertThat(drop.step()).isTrue();
        assertThat(Files.readAllBytes(drop.file())).isEqualTo(writer().frame(0));
        CameraDrop again = CameraDrop.of(writer(), 0, folder, 1);
        assertThatThrownBy(again::step).isInstanceOf(FileAlreadyExistsException.class);
    }

    @Test
    void mishapsLeaveWhatTheyAreNamedFor() throws IOException {
        Path cut = writer().writeFrame(0, folder);
        long whole = Files.size(cut);
        Mishaps.truncate(cut, 0.5);
        assertThat(Files.size(cut)).isEqualTo(whole / 2);
        Mishaps.notAnImage(cut);
        assertThat(ImageIO.read(cut.toFile())).isNull();
        Mishaps.empty(cut);
        assertThat(cut).isEmptyFile();
        Mishaps.wrongSize(writer(), 1, folder);
        assertThat(ImageIO.read(folder.resolve("HC_0002.tif").toFile()).getWidth())
                .isEqualTo(72);
        Path noisy = writer().writeFrame(2, folder);
        Mishaps.scramble(noisy, 5);
        assertThat(Files.size(noisy)).isEqualTo(whole);
        assertThat(Files.readAllBytes(noisy)).isNotEqualTo(writer().frame(2));
    }
}
