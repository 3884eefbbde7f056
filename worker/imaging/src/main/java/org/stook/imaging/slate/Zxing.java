package org.stook.imaging.slate;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.Reader;
import com.google.zxing.ReaderException;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import java.util.Map;
import java.util.Optional;

/** Hands a cut to a decoder of the barcode library, with both of its ways to tell dark from light. */
final class Zxing {
    private static final Map<DecodeHintType, ?> HARDER = Map.of(DecodeHintType.TRY_HARDER, true);

    private Zxing() {}

    static Optional<String> decode(Reader reader, GreyPicture cut) {
        LuminanceSource source = new PlanarYUVLuminanceSource(
                cut.levels(), cut.width(), cut.height(), 0, 0, cut.width(), cut.height(), false);
        Optional<String> text = decode(reader, new BinaryBitmap(new HybridBinarizer(source)));
        return text.isPresent() ? text : decode(reader, new BinaryBitmap(new GlobalHistogramBinarizer(source)));
    }

    private static Optional<String> decode(Reader reader, BinaryBitmap bitmap) {
        try {
            return Optional.ofNullable(reader.decode(bitmap, HARDER).getText());
        } catch (ReaderException | IllegalArgumentException | ArrayIndexOutOfBoundsException nothingThere) {
            // The library answers "nothing found" with exceptions, and stumbles over some pictures that hold nothing.
            return Optional.empty();
        }
    }
}
