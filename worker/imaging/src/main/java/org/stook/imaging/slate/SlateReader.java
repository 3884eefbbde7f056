package org.stook.imaging.slate;

import java.util.Optional;

/** Reads one symbology from a cut that holds at most one symbol. Stateless: one reader serves any number of threads. */
public interface SlateReader {
    /** The symbology's usual name: "QR". */
    String symbology();

    /**
     * The text of the symbol.
     *
     * @param cut upright or turned by quarters, light ground, the symbol near its middle
     * @return empty if there is no symbol of this kind, or its own check does not hold
     */
    Optional<String> read(GreyPicture cut);
}
