package org.stook.imaging.registration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.stook.imaging.frame.LumaSource;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.subject.Subject;

/** The luminance of a rendered bracket, whose placements are known exactly. */
final class BracketSource implements LumaSource {
    private final List<Plane> frames;
    private final List<Placement> truth;

    private BracketSource(List<Plane> frames, List<Placement> truth) {
        this.frames = frames;
        this.truth = truth;
    }

    static BracketSource of(Subject subject, BracketPlan plan) {
        Bracket bracket = Bracket.of(subject, plan);
        List<Plane> frames = new ArrayList<>();
        List<Placement> truth = new ArrayList<>();
        for (int f = 0; f < plan.frames(); f++) {
            frames.add(luma(bracket.encoded(f)));
            truth.add(Placement.of(bracket.pose(f).placement()));
        }
        return new BracketSource(frames, truth);
    }

    /** The same frames in another order, some left out or repeated. */
    BracketSource arranged(int... order) {
        return new BracketSource(
                Arrays.stream(order).mapToObj(frames::get).toList(),
                Arrays.stream(order).mapToObj(truth::get).toList());
    }

    /** With one frame replaced by a plane that has nothing to do with the others. */
    BracketSource with(int frame, Plane stranger) {
        List<Plane> other = new ArrayList<>(frames);
        other.set(frame, stranger);
        return new BracketSource(other, truth);
    }

    /** Seen through these maps as well: each frame pixel p shows what stood at {@code map(p)} before. */
    BracketSource warped(List<Placement> maps) {
        List<Plane> warped = new ArrayList<>();
        List<Placement> placed = new ArrayList<>();
        for (int f = 0; f < frames.size(); f++) {
            warped.add(warp(frames.get(f), maps.get(f)));
            placed.add(truth.get(f).then(maps.get(f).inverse()));
        }
        return new BracketSource(warped, placed);
    }

    /** As a camera on a rail sees it: a column stands at its own depth, and from frame to frame is shifted by that. */
    BracketSource onRail(double pixelsPerFrame) {
        List<Plane> moved = new ArrayList<>();
        for (int f = 0; f < frames.size(); f++) {
            Plane in = frames.get(f);
            Plane out = new Plane(in.width(), in.height());
            for (int y = 0; y < in.height(); y++) {
                for (int x = 0; x < in.width(); x++) {
                    double shift = f * pixelsPerFrame * Math.sin(3 * Math.PI * x / in.width());
                    out.set(
                            x,
                            y,
                            Cubic.at(
                                    in,
                                    Math.min(Math.max(x + shift, 1), in.width() - 3),
                                    Math.min(Math.max(y, 1), in.height() - 3)));
                }
            }
            moved.add(out);
        }
        return new BracketSource(moved, truth);
    }

    private static Plane warp(Plane in, Placement map) {
        Plane out = new Plane(in.width(), in.height());
        for (int y = 0; y < in.height(); y++) {
            for (int x = 0; x < in.width(); x++) {
                double sx = Math.min(Math.max(map.x(x, y), 1), in.width() - 3);
                double sy = Math.min(Math.max(map.y(x, y), 1), in.height() - 3);
                out.set(x, y, Cubic.at(in, sx, sy));
            }
        }
        return out;
    }

    List<Placement> truth() {
        return truth;
    }

    @Override
    public int frames() {
        return frames.size();
    }

    @Override
    public int width() {
        return frames.get(0).width();
    }

    @Override
    public int height() {
        return frames.get(0).height();
    }

    @Override
    public Plane read(int frame, int reduction) {
        Plane in = frames.get(frame);
        int n = reduction;
        Plane out = new Plane(in.width() / n, in.height() / n);
        for (int y = 0; y < out.height(); y++) {
            for (int x = 0; x < out.width(); x++) {
                float sum = 0;
                for (int j = 0; j < n; j++) for (int i = 0; i < n; i++) sum += in.at(x * n + i, y * n + j);
                out.set(x, y, sum / (n * n));
            }
        }
        return out;
    }

    private static Plane luma(Picture picture) {
        Plane plane = new Plane(picture.width(), picture.height());
        float[][] p = picture.planes();
        IntStream.range(0, plane.samples().length)
                .forEach(i -> plane.samples()[i] = 0.2126f * p[0][i] + 0.7152f * p[1][i] + 0.0722f * p[2][i]);
        return plane;
    }
}
