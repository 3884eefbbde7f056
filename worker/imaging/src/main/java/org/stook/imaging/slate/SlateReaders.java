package org.stook.imaging.slate;

import java.util.List;
import java.util.Optional;

/** All symbologies we read. */
public final class SlateReaders {
    private static final List<SlateReader> ALL = List.of(new QrReader(), new MatrixReader(), new Code128Reader());

    private SlateReaders() {}

    /** In the order in which they are asked. */
    public static List<SlateReader> all() {
        return ALL;
    }

    /** What is read first, of whatever symbology. */
    static Optional<SlateCode> first(Cut cut) {
        for (SlateReader reader : ALL) {
            Optional<String> text = reader.read(cut.picture());
            if (text.isPresent()) {
                return Optional.of(new SlateCode(reader.symbology(), text.get(), cut.x(), cut.y()));
            }
        }
        return Optional.empty();
    }
}
