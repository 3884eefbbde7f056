package org.stook.scenes.subject;

import java.util.List;

/** Something to stand before the camera. */
public interface Subject {
    /** Short lower-case name as used on the command line. */
    String name();

    /** Words for a label: what the piece is and its number in the invented collection. */
    String title();

    /**
     * The surfaces from back to front, with detail fit for a pixel of this size.
     *
     * @param pixel size of a pixel of the reference frame in picture heights, more than 0
     */
    List<Sheet> sheets(double pixel);
}
