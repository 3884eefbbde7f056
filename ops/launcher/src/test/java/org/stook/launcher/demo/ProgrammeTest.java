package org.stook.launcher.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.scenes.file.CameraDrop;

class ProgrammeTest {
    private static final Programme SMALL = new Programme(150, 100, 3);

    @TempDir
    private Path intake;

    @Test
    void threePiecesAreShotAndTheNextRoundShootsOthers() throws IOException {
        assertThat(names(SMALL.shoots(intake))).containsExactly("HC-0117-mineral", "HC-0142-shell", "HC-0168-watch");
        Files.createDirectory(intake.resolve("HC-0117-mineral"));
        assertThat(names(SMALL.shoots(intake))).containsExactly("HC-0217-mineral", "HC-0242-shell", "HC-0268-watch");
    }

    @Test
    void theSweepFallsFirstAndThenWhatGoesWrong() throws IOException {
        List<Shoot> shoots = SMALL.shoots(intake);
        Path mineral = dropAll(shoots.get(0));
        assertThat(size(mineral, 1)).isEqualTo("150x100");
        assertThat(brightest(mineral, 4)).as("the lens cap was on").isLessThan(30);
        assertThat(size(mineral, 5)).isEqualTo("150x100");
        Path shell = dropAll(shoots.get(1));
        assertThat(Files.size(file(shell, 4))).isPositive().isEqualTo((long) (Files.size(file(shell, 2)) * 0.6));
        assertThat(file(shell, 5)).isEmptyFile();
        Path watch = dropAll(shoots.get(2));
        assertThat(file(watch, 4)).content().startsWith("Harrow Cabinet");
        assertThat(size(watch, 5)).isEqualTo("112x75");
    }

    private static Path dropAll(Shoot shoot) throws IOException {
        Files.createDirectories(shoot.folder());
        for (CameraDrop drop : shoot.drops()) {
            boolean complete = drop.step();
            while (!complete) complete = drop.step();
        }
        return shoot.folder();
    }

    private static Path file(Path folder, int number) {
        return folder.resolve("HC_000" + number + ".jpg");
    }

    private static String size(Path folder, int number) throws IOException {
        var image = ImageIO.read(new ByteArrayInputStream(Files.readAllBytes(file(folder, number))));
        return image.getWidth() + "x" + image.getHeight();
    }

    private static int brightest(Path folder, int number) throws IOException {
        var image = ImageIO.read(file(folder, number).toFile());
        int brightest = 0;
        for (int x = 0; x < image.getWidth(); x++) brightest = Math.max(brightest, image.getRGB(x, 50) & 0xFF);
        return brightest;
    }

    private static List<String> names(List<Shoot> shoots) {
        return shoots.stream().map(s -> s.folder().getFileName().toString()).toList();
    }
}
