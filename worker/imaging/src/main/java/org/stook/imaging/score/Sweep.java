package org.stook.imaging.score;

import java.util.List;

/**
 * What the survey found of the sweep's reach.
 *
 * @param frames how many the sweep has
 * @param openFirstPercent textured tiles that lie before the first frame, with no backdrop's distance between
 * @param openLastPercent likewise behind the last frame
 * @param gaps steps too wide, in sweep order
 */
public record Sweep(int frames, double openFirstPercent, double openLastPercent, List<Gap> gaps) {
    public Sweep {
        gaps = List.copyOf(gaps);
    }

    /**
     * A step too wide.
     *
     * @param before name of the frame before it
     * @param after name of the frame after it
     * @param missing about how many frames are missing there
     */
    public record Gap(String before, String after, double missing) {}
}
