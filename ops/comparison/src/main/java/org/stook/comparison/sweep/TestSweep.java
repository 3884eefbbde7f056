package org.stook.comparison.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.survey.FrameSurvey;
import org.stook.imaging.survey.FrameSurveyor;
import org.stook.imaging.survey.SweepSurvey;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.bracket.Truth;
import org.stook.scenes.subject.Subject;

/** A rendered sweep that is whole, surveyed frame by frame, and what can be taken from it. */
public final class TestSweep {
    private final Bracket bracket;
    private final Truth truth;
    private final List<FrameSurvey> frames;

    private TestSweep(Bracket bracket, List<FrameSurvey> frames) {
        this.bracket = bracket;
        this.truth = bracket.truthIn(bracket.plan().reference());
        this.frames = frames;
    }

    public static TestSweep of(Subject subject, BracketPlan plan) {
        Bracket bracket = Bracket.of(subject, plan);
        List<FrameSurvey> frames = IntStream.range(0, plan.frames())
                .mapToObj(f -> FrameSurveyor.survey(luma(bracket.encoded(f)), 1))
                .toList();
        return new TestSweep(bracket, frames);
    }

    /** Share of the subject, by the generator's truth, that lies between two places in the sweep. */
    public double share(double from, double to) {
        int inside = 0;
        int all = 0;
        float[] position = truth.position();
        boolean[] subject = truth.subject();
        for (int i = 0; i < position.length; i++) {
            if (!subject[i]) continue;
            all++;
            if (position[i] >= from && position[i] < to) inside++;
        }
        return (double) inside / Math.max(1, all);
    }

    public int size() {
        return frames.size();
    }

    public SweepSurvey whole() {
        return SweepSurvey.of(frames);
    }

    /** Without some frames that follow each other. */
    public SweepSurvey without(int first, int count) {
        List<FrameSurvey> left = new ArrayList<>(frames);
        left.subList(first, first + count).clear();
        return SweepSurvey.of(left);
    }

    /**
     * One frame shaken: its picture smeared evenly along a line while it was exposed.
     *
     * @param pixels length of the line
     */
    public SweepSurvey shaken(int frame, int pixels, double degrees) {
        List<FrameSurvey> all = new ArrayList<>(frames);
        all.set(frame, FrameSurveyor.survey(smeared(luma(bracket.encoded(frame)), pixels, degrees), 1));
        return SweepSurvey.of(all);
    }

    private static Plane smeared(Plane in, int pixels, double degrees) {
        Plane out = new Plane(in.width(), in.height());
        double dx = Math.cos(Math.toRadians(degrees));
        double dy = Math.sin(Math.toRadians(degrees));
        for (int y = 0; y < in.height(); y++) {
            for (int x = 0; x < in.width(); x++) {
                float sum = 0;
                for (int i = 0; i <= pixels; i++) {
                    double t = i - pixels / 2.0;
                    sum += at(in, x + t * dx, y + t * dy);
                }
                out.set(x, y, sum / (pixels + 1));
            }
        }
        return out;
    }

    private static float at(Plane plane, double x, double y) {
        int ix = (int) Math.max(0, Math.min(plane.width() - 2, Math.floor(x)));
        int iy = (int) Math.max(0, Math.min(plane.height() - 2, Math.floor(y)));
        float fx = (float) Math.max(0, Math.min(1, x - ix));
        float fy = (float) Math.max(0, Math.min(1, y - iy));
        float top = plane.at(ix, iy) * (1 - fx) + plane.at(ix + 1, iy) * fx;
        float bottom = plane.at(ix, iy + 1) * (1 - fx) + plane.at(ix + 1, iy + 1) * fx;
        return top * (1 - fy) + bottom * fy;
    }

    private static Plane luma(Picture picture) {
        Plane plane = new Plane(picture.width(), picture.height());
        float[][] rgb = picture.planes();
        for (int i = 0; i < plane.width() * plane.height(); i++) {
            plane.samples()[i] = 0.2126f * rgb[0][i] + 0.7152f * rgb[1][i] + 0.0722f * rgb[2][i];
        }
        return plane;
    }
}
