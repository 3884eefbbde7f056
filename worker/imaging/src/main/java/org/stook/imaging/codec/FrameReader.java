package org.stook.imaging.codec;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Samples;

/**
 * Reads frames of one file format. Stateless: one reader serves any number of threads.
 *
 * <p>All reading methods throw {@link UnreadableFrame} for anything wrong with the content, and {@link IOException} only
 * if the file cannot be got at (gone, no permission, share lost); the latter may pass, the former will not.
 */
public interface FrameReader {
    /** Number of bytes from the start of a file that {@link #recognises} may look at. */
    int START = 4096;

    /** Short name of the format, as reports show it: "JPEG". */
    String format();

    /**
     * Whether a file that starts with these bytes is of this format.
     *
     * @param start the first {@link #START} bytes, or all of a shorter file
     */
    boolean recognises(byte[] start);

    /**
     * Whether a file is of this format, where its first bytes alone do not tell.
     *
     * @param start as above
     */
    default boolean recognises(Path file, byte[] start) throws IOException {
        return recognises(start);
    }

    /** Whether its files hold what a sensor counted, of which a picture has to be made first. */
    default boolean isRaw() {
        return false;
    }

    /**
     * What the file says about itself. Checks that the file is whole (the picture's last byte is there), without
     * decoding it.
     */
    FrameHeader header(Path file) throws UnreadableFrame, IOException;

    /** The whole picture, upright, all code values kept. Checks all that {@link #header} checks, and the data. */
    default Samples read(Path file) throws UnreadableFrame, IOException {
        return read(file, new SampleArrays());
    }

    /** The same, into an array that was given back if there is one. */
    Samples read(Path file, SampleArrays arrays) throws UnreadableFrame, IOException;

    /**
     * A part of the picture where it can be had without holding the whole; for looking at. Damage beyond the part goes unnoticed.
     *
     * @param part in pixels of the upright picture, inside it
     * @return samples of the part's size, the same as {@link #read} has there; empty if the file must be read as a whole
     */
    default Optional<Samples> readPart(Path file, Area part) throws UnreadableFrame, IOException {
        return Optional.empty();
    }

    /**
     * The picture reduced for survey and registration: each sample is the mean of n x n code values, rounded half up, in
     * 16 bit (8-bit code c counts as 257 c). A last column or row that does not fill a whole cell is left out.
     *
     * @param n 1 or more, and not beyond the width or height
     */
    default Samples readReduced(Path file, int n) throws UnreadableFrame, IOException {
        return BoxAverage.by(n, read(file));
    }
}
