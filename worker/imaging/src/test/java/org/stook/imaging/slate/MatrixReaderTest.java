package org.stook.imaging.slate;

import com.google.zxing.BarcodeFormat;

class MatrixReaderTest extends SlateReaderContract {
    @Override
    SlateReader reader() {
        return new MatrixReader();
    }

    @Override
    BarcodeFormat format() {
        return BarcodeFormat.DATA_MATRIX;
    }
}
