package org.stook.imaging.composite.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.tone.ColourSpace;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class TilePyramidTest {
    private static final int WIDTH = 1301;
    private static final int HEIGHT = 701;

    @TempDir
    Path home;

    /** Sizes and regions worked out by hand after IIIF Image API 3.0, section 5.6 and implementation notes on tiles. */
    @Test
    void tilesHaveTheNamesThatTheStandardGivesThem() throws IOException {
        TilePyramid.write(ramp(), ColourSpace.srgb(), home.resolve("t"), 2);
        assertThat(files(home.resolve("t")))
                .containsExactlyInAnyOrder(
                        "info.json",
                        "0,0,512,512/512,512/0/default.jpg",
                        "512,0,512,512/512,512/0/default.jpg",
                        "1024,0,277,512/277,512/0/default.jpg",
                        "0,512,512,189/512,189/0/default.jpg",
                        "512,512,512,189/512,189/0/default.jpg",
                        "1024,512,277,189/277,189/0/default.jpg",
                        "0,0,1024,701/512,351/0/default.jpg",
                        "1024,0,277,701/139,351/0/default.jpg",
                        "0,0,1301,701/326,176/0/default.jpg",
                        "full/326,176/0/default.jpg");
    }

    @Test
    void infoSaysWhatThereIs() throws IOException {
        TilePyramid.write(ramp(), ColourSpace.srgb(), home.resolve("t"), 1);
        JsonNode info = JsonMapper.builder()
                .build()
                .readTree(home.resolve("t").resolve("info.json").toFile());
        assertThat(info.path("@context").stringValue()).isEqualTo("http://iiif.io/api/image/3/context.json");
        assertThat(info.path("profile").stringValue()).isEqualTo("level0");
        assertThat(info.path("width").intValue()).isEqualTo(WIDTH);
        assertThat(info.path("tiles").path(0).path("scaleFactors").toString()).isEqualTo("[1,2,4]");
        assertThat(info.path("sizes").toString()).isEqualTo("[{\"width\":326,\"height\":176}]");
    }

    @Test
    void everySizeShowsThePicture() throws IOException {
        TilePyramid.write(ramp(), ColourSpace.srgb(), home.resolve("t"), 2);
        BufferedImage whole = read("1024,512,277,189/277,189/0/default.jpg");
        assertThat(whole.getRGB(100, 50) >> 16 & 0xFF).isCloseTo(255 * 1124 / (WIDTH - 1), within(4));
        BufferedImage small = read("full/326,176/0/default.jpg");
        assertThat(small.getRGB(200, 88) >> 16 & 0xFF).isCloseTo(255 * 802 / (WIDTH - 1), within(5));
        assertThat(small.getRGB(200, 88) & 0xFF).isCloseTo(255 * 354 / (HEIGHT - 1), within(8));
    }

    /** Light, not code values, is averaged: a fine black and white pattern becomes sRGB code 188 (IEC 61966-2-1). */
    @Test
    void fineDetailBecomesTheGreyOfItsLight() throws IOException {
        Frame stripes = Frame.blank(1024, 1024, 1);
        for (int i = 0; i < 1024 * 1024; i++) stripes.plane(0).samples()[i] = i & 1;
        TilePyramid.write(stripes, ColourSpace.srgb().grey(), home.resolve("t"), 1);
        assertThat(read("full/512,512/0/default.jpg").getRaster().getSample(300, 300, 0))
                .isCloseTo(188, within(1));
    }

    @Test
    void theBytesDoNotDependOnTheThreads() throws IOException {
        TilePyramid.write(ramp(), ColourSpace.adobeRgb(), home.resolve("t"), 1);
        TilePyramid.write(ramp(), ColourSpace.adobeRgb(), home.resolve("u"), 5);
        for (String file : files(home.resolve("t"))) {
            if (file.endsWith(".json")) continue;
            assertThat(home.resolve("u").resolve(file))
                    .hasSameBinaryContentAs(home.resolve("t").resolve(file));
        }
    }

    private BufferedImage read(String tile) throws IOException {
        return ImageIO.read(home.resolve("t").resolve(tile).toFile());
    }

    private static List<String> files(Path folder) throws IOException {
        try (var all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString())
                    .toList();
        }
    }

    /** Red rises to the right, blue downwards. */
    private static Frame ramp() {
        Frame frame = Frame.blank(WIDTH, HEIGHT, 3);
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                frame.plane(0).set(x, y, x / (WIDTH - 1f));
                frame.plane(1).set(x, y, 0.5f);
                frame.plane(2).set(x, y, y / (HEIGHT - 1f));
            }
        }
        return frame;
    }
}
