package org.stook.imaging.slate;

import com.google.zxing.BarcodeFormat;

class Code128ReaderTest extends SlateReaderContract {
    @Override
    SlateReader reader() {
        return new Code128Reader();
    }

    @Override
    BarcodeFormat format() {
        return BarcodeFormat.CODE_128;
    }
}
