package org.stook.imaging.slate;

import com.google.zxing.qrcode.QRCodeReader;
import java.util.Optional;

/** QR code, ISO/IEC 18004. Its own check: Reed-Solomon. */
final class QrReader implements SlateReader {
    @Override
    public String symbology() {
        return "QR";
    }

    @Override
    public Optional<String> read(GreyPicture cut) {
        return Zxing.decode(new QRCodeReader(), cut).filter(text -> !text.isBlank());
    }
}
