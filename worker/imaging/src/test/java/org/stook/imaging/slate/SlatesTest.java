package org.stook.imaging.slate;

import static org.assertj.core.api.Assertions.assertThat;

import boofcv.alg.fiducial.qrcode.QrCode;
import boofcv.alg.fiducial.qrcode.QrCodeEncoder;
import boofcv.alg.fiducial.qrcode.QrCodeGeneratorImage;
import com.google.zxing.BarcodeFormat;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class SlatesTest {
    private static final int WIDTH = 6000;
    private static final int HEIGHT = 4000;

    /**
     * Three symbologies, modules of 6 and 12 pixels, four turns, sharp and softened by 1.5 pixels, in 24 MP: 48 pictures. Of them
     * 46 are to be read (the library by itself reads 28, in full size and trying harder) and none misread.
     */
    @Test
    void readsLabelsOfManyKindsAndMisreadsNone() {
        List<LabelScene> scenes = scenes();
        List<LabelScene> missed = new ArrayList<>();
        for (LabelScene scene : scenes) {
            List<String> texts = texts(Slates.read(scene.draw(WIDTH, HEIGHT)));
            assertThat(List.of(scene.text())).as("%s", scene).containsAll(texts);
            if (texts.isEmpty()) missed.add(scene);
        }
        assertThat(scenes).hasSize(48);
        assertThat(missed).hasSizeLessThanOrEqualTo(2);
    }

    private static List<LabelScene> scenes() {
        List<LabelScene> scenes = new ArrayList<>();
        for (BarcodeFormat format :
                new BarcodeFormat[] {BarcodeFormat.QR_CODE, BarcodeFormat.DATA_MATRIX, BarcodeFormat.CODE_128}) {
            for (int module : new int[] {6, 12}) {
                for (double degrees : new double[] {0, 7, 33, 90}) {
                    for (double softness : new double[] {0, 1.5}) {
                        String text = "HC-%05d".formatted(41_000 + 37 * scenes.size());
                        scenes.add(new LabelScene(format, text, module, degrees, softness));
                    }
                }
            }
        }
        return scenes;
    }

    @Test
    void readsAllCodesOfOnePicture() {
        GreyPicture left = new LabelScene(BarcodeFormat.QR_CODE, "HC-00917", 6, 12, 0).draw(1500, 1200);
        GreyPicture right = new LabelScene(BarcodeFormat.CODE_128, "DRAWER-14", 4, -5, 0.7).draw(1500, 1200);
        byte[] both = new byte[3000 * 1200];
        for (int y = 0; y < 1200; y++) {
            System.arraycopy(left.levels(), y * 1500, both, y * 3000, 1500);
            System.arraycopy(right.levels(), y * 1500, both, y * 3000 + 1500, 1500);
        }
        assertThat(texts(Slates.read(new GreyPicture(3000, 1200, both))))
                .containsExactlyInAnyOrder("HC-00917", "DRAWER-14");
    }

    @Test
    void readsACodeOnAWhiteGroundWithoutAnyLabel() {
        GreyPicture drawn = new LabelScene(BarcodeFormat.DATA_MATRIX, "HC-00918", 8, 20, 1).draw(900, 900);
        byte[] white = drawn.levels().clone();
        for (int i = 0; i < white.length; i++) if ((white[i] & 0xFF) > 80) white[i] = (byte) 230;
        byte[] wide = new byte[3000 * 2000];
        Arrays.fill(wide, (byte) 230);
        for (int y = 0; y < 900; y++) System.arraycopy(white, y * 900, wide, (500 + y) * 3000 + 1200, 900);
        assertThat(texts(Slates.read(new GreyPicture(3000, 2000, wide)))).containsExactly("HC-00918");
    }

    @Test
    void aSpoiltCodeIsCountedAsUnread() {
        GreyPicture picture = new LabelScene(BarcodeFormat.QR_CODE, "HC-00919", 8, 0, 0).draw(1500, 1200);
        for (int y = 540; y < 620; y++) Arrays.fill(picture.levels(), y * 1500 + 740, y * 1500 + 900, (byte) 228);
        SlateReading reading = Slates.read(picture);
        assertThat(reading.codes()).isEmpty();
        assertThat(reading.unread()).isEqualTo(1);
    }

    @Test
    void readsNothingOnAGroundWithoutLabels() {
        assertThat(Slates.read(new GreyPicture(WIDTH, HEIGHT, LabelScene.ground(WIDTH, HEIGHT))))
                .isEqualTo(new SlateReading(List.of(), 0));
    }

    /** Outside check: the symbol is drawn by another library (BoofCV) than the one that decodes. */
    @Test
    void readsAQrCodeThatAnotherLibraryDrew() {
        QrCode code = new QrCodeEncoder().addAutomatic("HC-2077/dorsal").fixate();
        QrCodeGeneratorImage drawing = new QrCodeGeneratorImage(7);
        drawing.setBorderModule(6);
        drawing.render(code);
        var grey = drawing.getGray();
        byte[] levels = Arrays.copyOf(grey.data, grey.width * grey.height);
        assertThat(texts(Slates.read(new GreyPicture(grey.width, grey.height, levels))))
                .containsExactly("HC-2077/dorsal");
    }

    private static List<String> texts(SlateReading reading) {
        return reading.codes().stream().map(SlateCode::text).toList();
    }
}
