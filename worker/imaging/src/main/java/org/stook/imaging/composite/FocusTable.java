package org.stook.imaging.composite;

import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.survey.Coverage;
import org.stook.imaging.survey.FrameSurvey;

/**
 * Where and how sharp each frame of the sweep is, coarsely: for plots, and to see which frame shows what.
 *
 * @param columns cells along a row of the frame
 * @param rows cells along a column
 * @param frames in sweep order, those outside the span included
 * @param gaps steps too wide
 * @param openFirstPercent of the textured tiles that lie before the first frame
 * @param openLastPercent behind the last one
 */
public record FocusTable(
        int columns, int rows, List<Row> frames, List<Gap> gaps, double openFirstPercent, double openLastPercent) {
    private static final int GROUP = 2;
    /** A cell shows texture if its best frame rises so far above noise. */
    private static final double TEXTURED = 4;

    /**
     * One frame.
     *
     * @param position on the focus axis, in usual steps from the first frame
     * @param sharpestPercent of the textured cells, those in which this frame is the sharpest
     * @param sharpness of each cell, row by row: per cent of the sharpest frame there; -1 where the cell has too little texture
     */
    public record Row(String file, double position, double sharpestPercent, List<Integer> sharpness) {}

    /** A step too wide. @param missing about how many frames are missing there */
    public record Gap(String before, String after, double missing) {}

    static FocusTable of(Surveyed surveyed) {
        List<double[]> cells = new ArrayList<>();
        FrameSurvey first = surveyed.sweep().get(0).survey();
        int columns = (first.tilesX() + GROUP - 1) / GROUP;
        int rows = (first.tilesY() + GROUP - 1) / GROUP;
        double floor = 0;
        for (Sighting frame : surveyed.sweep()) {
            cells.add(cells(frame.survey(), columns, rows));
            floor = Math.max(floor, floor(frame.survey()));
        }
        Coverage coverage = surveyed.survey().coverage();
        return new FocusTable(
                columns,
                rows,
                rows(surveyed, cells, TEXTURED * floor),
                coverage.gaps().stream()
                        .map(g -> new Gap(
                                surveyed.captured(g.before()).name(),
                                surveyed.captured(g.after()).name(),
                                g.steps() - 1))
                        .toList(),
                100 * coverage.openAtFirst(),
                100 * coverage.openAtLast());
    }

    private static List<Row> rows(Surveyed surveyed, List<double[]> cells, double least) {
        int count = cells.get(0).length;
        int[] sharpest = new int[count];
        int textured = 0;
        for (int c = 0; c < count; c++) {
            for (int f = 1; f < cells.size(); f++) if (cells.get(f)[c] > cells.get(sharpest[c])[c]) sharpest[c] = f;
            if (cells.get(sharpest[c])[c] < least) sharpest[c] = -1;
            else textured++;
        }
        List<Row> rows = new ArrayList<>();
        for (int f = 0; f < cells.size(); f++) {
            List<Integer> sharpness = new ArrayList<>();
            int here = 0;
            for (int c = 0; c < count; c++) {
                if (sharpest[c] == f) here++;
                sharpness.add(
                        sharpest[c] < 0
                                ? -1
                                : (int) Math.round(100 * Math.sqrt(cells.get(f)[c] / cells.get(sharpest[c])[c])));
            }
            double position = surveyed.survey().positions()[f];
            double percent = textured == 0 ? 0 : 100.0 * here / textured;
            rows.add(new Row(surveyed.sweep().get(f).name(), position, percent, sharpness));
        }
        return rows;
    }

    /** Means of groups of tiles. */
    private static double[] cells(FrameSurvey survey, int columns, int rows) {
        double[] sums = new double[columns * rows];
        int[] counts = new int[sums.length];
        for (int t = 0; t < survey.tiles(); t++) {
            int cell = t / survey.tilesX() / GROUP * columns + t % survey.tilesX() / GROUP;
            sums[cell] += survey.sharpness(t);
            counts[cell]++;
        }
        for (int c = 0; c < sums.length; c++) sums[c] /= counts[c];
        return sums;
    }

    private static double floor(FrameSurvey survey) {
        double sum = 0;
        for (int k = 0; k < survey.floors().length; k++) sum += survey.floors()[k] / (1 << k);
        return sum;
    }
}
