package org.stook.imaging.slate;

import com.google.zxing.BarcodeFormat;

class QrReaderTest extends SlateReaderContract {
    @Override
    SlateReader reader() {
        return new QrReader();
    }

    @Override
    BarcodeFormat format() {
        return BarcodeFormat.QR_CODE;
    }
}
