package org.stook.scenes.subject;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stook.scenes.subject.FlatPart.Finish;
import org.stook.scenes.subject.FlatPart.Tilt;

/** The plate of a watch with wheels, bridges and screws at different heights. */
final class Watch implements Subject {
    private static final Tint PAPER = new Tint(0.09, 0.09, 0.10);

    private final long seed;

    Watch(long seed) {
        this.seed = seed;
    }

    @Override
    public String name() {
        return "watch";
    }

    @Override
    public String title() {
        return "Harrow Cabinet HC-0906, watch movement, train side";
    }

    @Override
    public List<Sheet> sheets(double pixel) {
        Grain grain = new Grain(seed);
        Parts parts = new Parts(new Metal(grain, pixel), pixel);
        parts.plate();
        parts.wheel(-0.16, 0.02, 0.19, 64, 0.74, 5);
        parts.wheel(0.13, -0.17, 0.15, 48, 0.62, 4);
        parts.wheel(0.05, 0.15, 0.13, 40, 0.50, 5);
        parts.wheel(-0.05, -0.20, 0.085, 28, 0.42, 4);
        parts.bridge(-0.33, 0.20, -0.05, 0.28, 0.30);
        parts.bridge(-0.28, -0.24, 0.05, -0.31, 0.34);
        parts.bridge(0.02, 0.00, 0.33, -0.03, 0.26);
        parts.balance(0.23, 0.17, 0.17);
        List<Sheet> sheets = new ArrayList<>();
        sheets.add(new Backdrop(grain, pixel, 1.45, PAPER));
        parts.made.sort(
                Comparator.comparingDouble(p -> -(p.extent().near() + p.extent().far())));
        sheets.addAll(parts.made);
        return sheets;
    }

    /** Makes the parts; every kind adds what belongs to it. */
    private static final class Parts {
        private final List<FlatPart> made = new ArrayList<>();
        private final Metal metal;
        private final double pixel;

        Parts(Metal metal, double pixel) {
            this.metal = metal;
            this.pixel = pixel;
        }

        private void add(Outline outline, Tilt tilt, Finish finish) {
            made.add(new FlatPart(outline, tilt, finish, pixel));
        }

        void plate() {
            Outline plate = Outline.disc(0, 0, 0.47).without(Outline.disc(0.33, -0.22, 0.045));
            add(plate, new Tilt(0, 0, 0.49, 0.92, 0.12, 0.05), metal.spotted(Metal.NICKEL));
            double[][] screws = {{-0.40, -0.10}, {-0.38, 0.13}, {0.41, -0.06}, {0.02, 0.42}, {0.20, -0.38}};
            for (double[] at : screws) screw(at[0], at[1], 0.86, 3 * at[0]);
        }

        void wheel(double x, double y, double radius, int teeth, double depth, int spokes) {
            int seen = (int) Math.min(teeth, 2 * Math.PI * radius / (7 * pixel));
            Outline wheel = Outline.toothed(x, y, radius - 0.008, 0.008, seen)
                    .without(Outline.openings(x, y, 0.3 * radius, 0.78 * radius, spokes));
            Tilt tilt = new Tilt(x, y, radius + 0.01, depth, 0.03, -0.04);
            add(wheel, tilt, metal.turned(x, y, Metal.BRASS));
            Tilt above = new Tilt(x, y, 0.05, depth - 0.05, 0, 0);
            add(Outline.toothed(x, y, 0.036, 0.006, 10), above, metal.turned(x, y, Metal.STEEL));
        }

        void bridge(double x0, double y0, double x1, double y1, double depth) {
            Outline bridge = Outline.bar(x0, y0, x1, y1, 0.034)
                    .with(Outline.disc(x0, y0, 0.05))
                    .with(Outline.disc(x1, y1, 0.042));
            double reach = Edges.length(x1 - x0, y1 - y0) / 2 + 0.06;
            Tilt tilt = new Tilt((x0 + x1) / 2, (y0 + y1) / 2, reach, depth, 0.05, 0.06);
            add(bridge, tilt, metal.striped(0.6, Metal.STEEL));
            screw(x0, y0, depth - 0.07, 1 + x0);
            Outline stone = Outline.disc(x1, y1, 0.022).without(Outline.disc(x1, y1, 0.006));
            add(stone, new Tilt(x1, y1, 0.03, depth - 0.04, 0, 0), metal.turned(x1, y1, Metal.RUBY));
        }

        void screw(double x, double y, double depth, double turn) {
            Tilt tilt = new Tilt(x, y, 0.03, depth, 0, 0);
            add(Outline.disc(x, y, 0.024), tilt, metal.slotted(x, y, turn, Metal.BLUED));
        }

        void balance(double x, double y, double radius) {
            Outline wheel = Outline.disc(x, y, radius).without(Outline.openings(x, y, 0.2 * radius, 0.87 * radius, 2));
            add(wheel, new Tilt(x, y, radius + 0.01, 0.12, 0.08, -0.1), metal.turned(x, y, Metal.BRASS));
            double wire = Math.max(0.0016, 1.2 * pixel);
            Outline spring = Outline.spiral(x, y, 0.025, 0.105, Math.max(0.0105, 6.5 * pixel), wire);
            add(spring, new Tilt(x, y, 0.11, 0.04, 0.06, 0), metal.turned(x, y, Metal.BLUED));
            screw(x, y, 0.02, 0.9);
        }
    }
}
