package org.stook.imaging.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.imaging.codec.UnreadableFrame.Reason;
import org.stook.imaging.frame.Samples;

/** Read files come from the Java runtime's TIFF writer and from hand-made directories. */
class TiffReaderTest extends FrameReaderContract {
    @Override
    FrameReader reader() {
        return new TiffReader();
    }

    @Override
    List<SampleFile> files() throws Exception {
        List<SampleFile> files = new ArrayList<>();
        for (String compression : List.of("LZW", "Deflate", "ZLib", "PackBits")) {
            // Strips of 8 bit colour in little endian, tiles of 16 bit grey in big endian.
            boolean tiled = compression.equals("ZLib") || compression.equals("PackBits");
            Samples truth = tiled ? TestPicture.sixteen(61, 43, 1) : TestPicture.eight(61, 43, 3);
            ByteOrder order = tiled ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
            files.add(new SampleFile(compression, RuntimeFiles.tiff(truth, compression, order, tiled), truth, 0));
        }
        Samples colour = TestPicture.sixteen(61, 43, 3);
        files.add(new SampleFile(
                "LZW 16 bit RGB", RuntimeFiles.tiff(colour, "LZW", ByteOrder.BIG_ENDIAN, false), colour, 0));
        files.add(new SampleFile(
                "LZW tiles", RuntimeFiles.tiff(colour, "LZW", ByteOrder.LITTLE_ENDIAN, true), colour, 0));
        files.add(new SampleFile("uncompressed", written(colour), colour, 0));
        return files;
    }

    private static byte[] written(Samples samples) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TiffWriter.write(Frames.of(samples), TiffTags.sixteenBit(Optional.empty(), ""), out);
        return out.toByteArray();
    }

    @Test
    void readsLargeLzwStripsThroughTableResets() throws Exception {
        Samples truth = TestPicture.eight(400, 300, 3);
        Samples read = reader().read(write("f", RuntimeFiles.tiff(truth, "LZW", ByteOrder.LITTLE_ENDIAN, false)));
        assertThat(TestPicture.codes(read)).isEqualTo(TestPicture.codes(truth));
    }

    @Test
    void readsPlanesStoredOneByOneAndDropsAlpha() throws Exception {
        byte[] file = new TiffBytes(2, 1)
                .with(262, 2)
                .with(277, 4)
                .with(258, 8, 8, 8, 8)
                .with(284, 2)
                .with(338, 1)
                .strips(new byte[] {1, 2}, new byte[] {11, 12}, new byte[] {21, 22}, new byte[] {99, 99})
                .bytes();
        assertThat(TestPicture.codes(reader().read(write("f", file)))).containsExactly(1, 11, 21, 2, 12, 22);
    }

    @Test
    void readsInterleavedAlphaAsColourOnly() throws Exception {
        byte[] file = new TiffBytes(2, 1)
                .with(262, 2)
                .with(277, 4)
                .with(258, 8, 8, 8, 8)
                .strips(new byte[] {1, 11, 21, 99, 2, 12, 22, 99})
                .bytes();
        assertThat(TestPicture.codes(reader().read(write("f", file)))).containsExactly(1, 11, 21, 2, 12, 22);
    }

    @Test
    void invertsGreyWhoseZeroIsWhite() throws Exception {
        byte[] file =
                new TiffBytes(2, 1).with(262, 0).strips(new byte[] {0, 55}).bytes();
        assertThat(TestPicture.codes(reader().read(write("f", file)))).containsExactly(255, 200);
    }

    @Test
    void turnsPictureUpright() throws Exception {
        byte[] file = new TiffBytes(3, 2)
                .with(274, 6)
                .strips(new byte[] {1, 2, 3, 4, 5, 6})
                .bytes();
        Samples upright = reader().read(write("f", file));
        assertThat(reader().header(write("f", file)).width()).isEqualTo(2);
        assertThat(upright.width()).isEqualTo(2);
        assertThat(TestPicture.codes(upright)).containsExactly(4, 1, 5, 2, 6, 3);
    }

    @ParameterizedTest
    @CsvSource({
        "262, 3, UNSUPPORTED, palette",
        "262, 5, UNSUPPORTED, CMYK",
        "262, 32803, UNSUPPORTED, raw",
        "50706, 1, UNSUPPORTED, camera raw file",
        "258, 12, UNSUPPORTED, 12",
        "259, 7, UNSUPPORTED, compression 7",
        "266, 2, UNSUPPORTED, fill order",
        "339, 3, UNSUPPORTED, sample format 3",
        "256, 0, DAMAGED, 0 x 2",
        "256, 400000000, UNSUPPORTED, at most 536 million",
        "257, 100000, INCOMPLETE, at least",
        "273, 5000000, INCOMPLETE, at least",
        "279, 3, DAMAGED, enough data"
    })
    void saysWhyAVariantIsNotRead(int tag, long value, Reason reason, String words) throws Exception {
        TiffBytes sound = new TiffBytes(3, 2).strips(new byte[] {1, 2, 3, 4, 5, 6});
        if (tag == 257) sound.with(279, 1 << 30);
        byte[] file = sound.with(tag, value).bytes();
        for (boolean header : new boolean[] {true, false}) {
            UnreadableFrame refused = catchThrowableOfType(
                    UnreadableFrame.class, () -> Frames.touch(reader(), write("odd.tif", file), header));
            assertThat(refused).hasMessageStartingWith("odd.tif: found ").hasMessageContaining(words);
            assertThat(refused.reason()).isEqualTo(reason);
        }
    }

    @ParameterizedTest
    @CsvSource({"5", "8", "32773"})
    void refusesSizeThatPackedDataCannotFillBeforeAllocating(int compression) throws Exception {
        byte[] bomb = new TiffBytes(20000, 20000)
                .with(259, compression)
                .strips(new byte[1000])
                .bytes();
        UnreadableFrame refused =
                catchThrowableOfType(UnreadableFrame.class, () -> reader().header(write("bomb.tif", bomb)));
        assertThat(refused.reason()).isEqualTo(Reason.DAMAGED);
    }

    @Test
    void refusesStripsThatAreOneAndTheSame() throws Exception {
        byte[] bomb = new TiffBytes(100, 100)
                .strips(new byte[1000])
                .with(278, 10)
                .with(273, 8, 8, 8, 8, 8, 8, 8, 8, 8, 8)
                .with(279, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000)
                .bytes();
        UnreadableFrame refused =
                catchThrowableOfType(UnreadableFrame.class, () -> reader().read(write("bomb.tif", bomb)));
        assertThat(refused).hasMessageContaining("share their bytes");
    }

    @Test
    void refusesBigTiffByName() throws Exception {
        byte[] file = {'I', 'I', 43, 0, 8, 0, 0, 0, 16, 0, 0, 0, 0, 0, 0, 0};
        UnreadableFrame refused =
                catchThrowableOfType(UnreadableFrame.class, () -> FrameReaders.header(write("big.tif", file)));
        assertThat(refused).hasMessageContaining("BigTIFF");
    }
}
