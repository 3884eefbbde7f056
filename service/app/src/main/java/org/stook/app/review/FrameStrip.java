package org.stook.app.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The blended frames side by side, each with where it is sharp. */
final class FrameStrip {
    private static final int SHARP = 90;
    private static final int NEARLY = 65;

    private FrameStrip() {}

    /**
     * One frame of the strip.
     *
     * @param rank among the blended ones, from 0
     * @param reason a doubt about its placement; may be empty
     * @param sharpest per cent of the textured cells in which it is the sharpest; negative if not known
     * @param sharp SVG path over the cells in which it is as good as the sharpest, a cell one unit wide and high
     * @param nearly likewise over those in which it comes near
     */
    public record Picture(
            int rank, String file, boolean reference, String reason, double sharpest, String sharp, String nearly) {
        /** Whole per cent. */
        public String share() {
            return sharpest < 0 ? "–" : String.format(Locale.ROOT, "%.0f %%", sharpest);
        }
    }

    static List<Picture> of(RunRecord record) {
        List<Picture> pictures = new ArrayList<>();
        int columns = record.focus().map(RunRecord.Focus::columns).orElse(1);
        for (RunRecord.Frame frame : record.blended()) {
            Optional<RunRecord.FocusFrame> focus = record.focusOf(frame.file());
            List<Integer> cells = focus.map(RunRecord.FocusFrame::sharpness).orElse(List.of());
            pictures.add(new Picture(
                    pictures.size(),
                    frame.file(),
                    frame.isReference(),
                    frame.reason(),
                    focus.map(RunRecord.FocusFrame::sharpestPercent).orElse(-1.0),
                    path(cells, columns, SHARP, 101),
                    path(cells, columns, NEARLY, SHARP)));
        }
        return pictures;
    }

    private static String path(List<Integer> cells, int columns, int from, int below) {
        StringBuilder path = new StringBuilder();
        for (int c = 0; c < cells.size(); c++) {
            if (cells.get(c) < from || cells.get(c) >= below) continue;
            path.append('M').append(c % columns).append(' ').append(c / columns).append("h1v1h-1z");
        }
        return path.toString();
    }
}
