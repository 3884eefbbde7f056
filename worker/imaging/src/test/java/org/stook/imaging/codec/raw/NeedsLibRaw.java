package org.stook.imaging.codec.raw;

import java.io.IOException;
import org.junit.jupiter.api.Assumptions;

/** For tests that unpack raw files. */
public final class NeedsLibRaw {
    private NeedsLibRaw() {}

    /** Skips the test where the library is absent, and says so. */
    public static void orSaySo() throws IOException {
        boolean present = new RawFiles().hasLibrary();
        if (!present) {
            System.err.println("""
                    ====================================================================
                    LibRaw is absent: raw frames are NOT tested.
                    On Debian: apt-get install libraw20
                    ====================================================================""");
        }
        Assumptions.assumeTrue(present, "LibRaw is absent");
    }
}
