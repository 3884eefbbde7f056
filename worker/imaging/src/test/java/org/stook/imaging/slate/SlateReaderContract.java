package org.stook.imaging.slate;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BarcodeFormat;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What every reader of a symbology promises. The symbols are drawn by the writers of the barcode library ZXing. */
abstract class SlateReaderContract {
    private static final String TEXT = "HC-2041";
    private static final int SIDE = 1500;

    /** The reader under test. */
    abstract SlateReader reader();

    /** How its symbols are drawn. */
    abstract BarcodeFormat format();

    @ParameterizedTest
    @ValueSource(doubles = {0, 90, 180, 270})
    void readsItsSymbolAtAnyQuarterTurn(double degrees) {
        assertThat(reader().read(cut(format(), 6, degrees, 0))).contains(TEXT);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 5, 9})
    void readsSoftSmallAndLargeModules(int module) {
        assertThat(reader().read(cut(format(), module, 0, module / 5f))).contains(TEXT);
    }

    @Test
    void readsNothingOffTheOtherSymbologies() {
        for (BarcodeFormat other :
                new BarcodeFormat[] {BarcodeFormat.QR_CODE, BarcodeFormat.DATA_MATRIX, BarcodeFormat.CODE_128}) {
            if (other != format())
                assertThat(reader().read(cut(other, 6, 0, 0))).isEmpty();
        }
    }

    @Test
    void readsNothingOffNoiseOrPaper() {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 20; i++) {
            byte[] levels = new byte[160 * 160];
            int module = 1 + i % 8;
            byte[] dots = new byte[160 * 160];
            random.nextBytes(dots);
            for (int p = 0; p < levels.length; p++) {
                levels[p] = (byte) (dots[p / 160 / module * 160 + p % 160 / module] < 0 ? 30 : 230);
            }
            assertThat(reader().read(new GreyPicture(160, 160, levels))).isEmpty();
        }
        byte[] paper = new byte[200 * 100];
        Arrays.fill(paper, (byte) 230);
        assertThat(reader().read(new GreyPicture(200, 100, paper))).isEmpty();
    }

    @Test
    void aTornSymbolGivesItsTextOrNothing() {
        GreyPicture whole = cut(format(), 6, 0, 0);
        for (int lost = 10; lost < 90; lost += 10) {
            byte[] levels = whole.levels().clone();
            for (int y = 0; y < whole.height(); y++) {
                Arrays.fill(levels, y * whole.width(), y * whole.width() + whole.width() * lost / 100, (byte) 228);
            }
            reader().read(new GreyPicture(whole.width(), whole.height(), levels))
                    .ifPresent(text -> assertThat(text).isEqualTo(TEXT));
        }
    }

    /** The symbol alone in the middle of its label. */
    private static GreyPicture cut(BarcodeFormat format, int module, double degrees, float softness) {
        GreyPicture picture = new LabelScene(format, TEXT, module, degrees, softness, false).draw(SIDE, SIDE);
        LabelFinder finder = new LabelFinder(picture);
        return finder.cut(finder.labels().get(0), SIDE, 1).picture();
    }
}
