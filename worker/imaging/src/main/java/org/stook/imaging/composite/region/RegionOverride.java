package org.stook.imaging.composite.region;

import java.util.List;

/**
 * A region that is taken from one frame, whatever the blend decided there.
 *
 * @param frame file name of a frame that is blended
 * @param outline corners of a polygon in pixels of the reference frame, at least three; where it crosses itself the even-odd rule
 *     holds
 * @param feather width of the soft edge in pixels, half of it on either side of the outline; 0 to 500
 */
public record RegionOverride(String frame, List<Point> outline, double feather) {
    public static final double USUAL_FEATHER = 8;

    private static final int MOST_CORNERS = 500;
    private static final double FARTHEST = 1e6;
    private static final double WIDEST = 500;

    /** A place in pixels, centres at integers. */
    public record Point(double x, double y) {}

    public RegionOverride {
        outline = List.copyOf(outline);
        if (outline.size() < 3 || outline.size() > MOST_CORNERS) {
            throw new IllegalArgumentException("the outline of a region must have 3 to %d corners, got %d"
                    .formatted(MOST_CORNERS, outline.size()));
        }
        for (Point p : outline) {
            if (!(Math.abs(p.x()) <= FARTHEST && Math.abs(p.y()) <= FARTHEST)) {
                throw new IllegalArgumentException("a corner of a region lies at " + p.x() + ", " + p.y());
            }
        }
        if (!(feather >= 0 && feather <= WIDEST)) {
            throw new IllegalArgumentException(
                    "the feather of a region must be 0 to %.0f pixels, got %s".formatted(WIDEST, feather));
        }
    }
}
