package org.stook.imaging.codec;

import java.awt.Rectangle;
import java.awt.image.DataBufferByte;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;
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
import org.stook.imaging.frame.Samples;

/**
 * Decodes the bare JPEG with the runtime's own reader, as a raster: no colour management, no guess about the colour
 * space.
 */
final class JpegDecoding {
    /** Padding before the end marker that some encoders leave; more means that decoding lost its place. */
    private static final int LEGAL_PADDING = 16;

    private static final Pattern PADDING =
            Pattern.compile("Corrupt JPEG data: (\\d+) extraneous bytes before marker 0xd9");
    private static final Pattern DAMAGE =
            Pattern.compile("(Corrupt JPEG data|Premature end|Inconsistent progression|Invalid SOS).*", Pattern.DOTALL);

    private JpegDecoding() {}

    static Samples decode(Path file, JpegStructure jpeg) throws UnreadableFrame {
        return decode(file, jpeg, Area.whole(jpeg.width(), jpeg.height()));
    }

    /** @param part of the stored picture */
    static Samples decode(Path file, JpegStructure jpeg, Area part) throws UnreadableFrame {
        ImageReader reader = runtimeReader();
        Complaints complaints = new Complaints();
        Raster raster;
        try {
            reader.addIIOReadWarningListener(complaints);
            reader.setInput(new ByteArrayImageInputStream(jpeg.bare()), true, true);
            ImageReadParam parameters = reader.getDefaultReadParam();
            parameters.setSourceRegion(new Rectangle(part.x(), part.y(), part.width(), part.height()));
            raster = reader.readRaster(0, parameters);
        } catch (IOException | RuntimeException broken) { // the bytes are in memory: it is the content, never the disk
            throw damaged(file, String.valueOf(broken.getMessage()));
        } finally {
            reader.dispose();
        }
        if (complaints.first != null) throw damaged(file, complaints.first);
        byte[] codes = codes(file, jpeg.channels(), part, raster);
        if (jpeg.isLumaChroma()) return new Samples.EightLumaChroma(part.width(), part.height(), codes);
        return new Samples.Eight(part.width(), part.height(), jpeg.channels(), codes);
    }

    private static ImageReader runtimeReader() {
        // Other plug-ins may be on the class path; the same reader must decode every frame.
        for (Iterator<ImageReader> all = ImageIO.getImageReadersByFormatName("jpeg"); all.hasNext(); ) {
            ImageReader reader = all.next();
            if ("java.desktop".equals(reader.getClass().getModule().getName())) return reader;
        }
        throw new IllegalStateException("this Java runtime has no JPEG reader (module java.desktop)");
    }

    private static byte[] codes(Path file, int channels, Area part, Raster raster) throws UnreadableFrame {
        boolean asDeclared = raster.getWidth() == part.width()
                && raster.getHeight() == part.height()
                && raster.getNumBands() == channels;
        if (!asDeclared) {
            throw damaged(
                    file,
                    "decoded %d x %d x %d".formatted(raster.getWidth(), raster.getHeight(), raster.getNumBands()));
        }
        boolean plain = raster.getSampleModel() instanceof PixelInterleavedSampleModel model
                && model.getScanlineStride() == part.width() * channels
                && model.getPixelStride() == channels
                && raster.getDataBuffer() instanceof DataBufferByte buffer
                && buffer.getData().length == part.width() * part.height() * channels;
        if (!plain) throw new IllegalStateException("the runtime's JPEG reader gave an unexpected raster: " + raster);
        return ((DataBufferByte) raster.getDataBuffer()).getData();
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
