package org.stook.imaging.slate;

import com.google.zxing.datamatrix.DataMatrixReader;
import java.util.Optional;

/** Data Matrix ECC 200, ISO/IEC 16022. Its own check: Reed-Solomon. The decoder wants the symbol in the middle of the cut. */
final class MatrixReader implements SlateReader {
    @Override
    public String symbology() {
        return "Data Matrix";
    }

    @Override
    public Optional<String> read(GreyPicture cut) {
        return Zxing.decode(new DataMatrixReader(), cut).filter(text -> !text.isBlank());
    }
}
