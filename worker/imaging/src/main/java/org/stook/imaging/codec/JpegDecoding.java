package org.stook.imaging.codec;

import java.awt.Rectangle;
import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadWarningListener;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.codec.UnreadableFrame.Reason;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.LargeArrays;
import org.stook.imaging.frame.Samples;

/**
 * Decodes the bare JPEG with the runtime's own reader, channels as they are stored: no colour management, no guess about the
 * colour space.
 */
final class JpegDecoding {
    /** Padding before the end marker that some encoders leave; more means that decoding lost its place. */
    private static final int LEGAL_PADDING = 16;

    private static final Pattern PADDING =
            Pattern.compile("Corrupt JPEG data: (\\d+) extraneous bytes before marker 0xd9");
    private static final Pattern DAMAGE =
            Pattern.compile("(Corrupt JPEG data|Premature end|Inconsistent progression|Invalid SOS).*", Pattern.DOTALL);

    private JpegDecoding() {}

    /**
     * @param part of the stored picture
     * @param arrays where the array of the samples is taken from
     */
    static Samples decode(Path file, JpegStructure jpeg, Area part, SampleArrays arrays) throws UnreadableFrame {
        int channels = jpeg.channels();
        byte[] codes = arrays.take(Math.multiplyExact(part.width() * part.height(), channels));
        ImageReader reader = runtimeReader();
        Complaints complaints = new Complaints();
        try {
            reader.addIIOReadWarningListener(complaints);
            reader.setInput(new ByteArrayImageInputStream(jpeg.bare()), true, true);
            if (reader.getWidth(0) != jpeg.width() || reader.getHeight(0) != jpeg.height()) {
                throw damaged(file, "decoded %d x %d".formatted(reader.getWidth(0), reader.getHeight(0)));
            }
            ImageReadParam parameters = reader.getDefaultReadParam();
            parameters.setSourceRegion(new Rectangle(part.x(), part.y(), part.width(), part.height()));
            parameters.setDestination(destination(part, channels, codes));
            decode(reader, parameters);
        } catch (IOException | RuntimeException broken) { // the bytes are in memory: it is the content, never the disk
            throw damaged(file, String.valueOf(broken.getMessage()));
        } finally {
            reader.dispose();
        }
        if (complaints.first != null) throw damaged(file, complaints.first);
        if (jpeg.isLumaChroma()) return new Samples.EightLumaChroma(part.width(), part.height(), codes);
        return new Samples.Eight(part.width(), part.height(), channels, codes);
    }

    private static void decode(ImageReader reader, ImageReadParam parameters) throws IOException {
        LargeArrays.beginPinning();
        try {
            reader.read(0, parameters);
        } finally {
            LargeArrays.endPinning();
        }
    }

    /**
     * A picture over the array, into which the reader copies whole lines. The colour space only has to have so many channels, and
     * be one that the reader converts nothing for.
     */
    private static BufferedImage destination(Area part, int channels, byte[] codes) {
        int[] offsets = channels == 1 ? new int[] {0} : new int[] {0, 1, 2};
        WritableRaster raster = Raster.createInterleavedRaster(
                new DataBufferByte(codes, codes.length),
                part.width(),
                part.height(),
                part.width() * channels,
                channels,
                offsets,
                null);
        ColorSpace space = ColorSpace.getInstance(channels == 1 ? ColorSpace.CS_GRAY : ColorSpace.CS_sRGB);
        ColorModel model = new ComponentColorModel(space, false, false, Transparency.OPAQUE, DataBuffer.TYPE_BYTE);
        return new BufferedImage(model, raster, false, null);
    }

    private static ImageReader runtimeReader() {
        // Other plug-ins may be on the class path; the same reader must decode every frame.
        for (Iterator<ImageReader> all = ImageIO.getImageReadersByFormatName("jpeg"); all.hasNext(); ) {
            ImageReader reader = all.next();
            if ("java.desktop".equals(reader.getClass().getModule().getName())) return reader;
        }
        throw new IllegalStateException("this Java runtime has no JPEG reader (module java.desktop)");
    }

    private static UnreadableFrame damaged(Path file, String found) {
        return UnreadableFrame.of(Reason.DAMAGED, file, found, "a JPEG that decodes to its end");
    }

    /** The decoder only warns about missing data, and paints the rest grey; we want to hear of it. */
    private static final class Complaints implements IIOReadWarningListener {
        private @Nullable String first;

        @Override
        public void warningOccurred(ImageReader source, String warning) {
            if (first == null && isDamage(warning)) first = warning;
        }

        private static boolean isDamage(String warning) {
            Matcher padding = PADDING.matcher(warning);
            if (padding.matches()) {
                return Optional.of(padding.group(1))
                                .filter(n -> n.length() < 4)
                                .map(Integer::parseInt)
                                .orElse(9999)
                        > LEGAL_PADDING;
            }
            return DAMAGE.matcher(warning).matches();
        }
    }
}
