package org.stook.imaging.composite;

import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.composite.Registered.PlacedFrame;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.placing.MapPlacer;

/** The maps of one frame at a time, drawn into the common area. */
final class MapsInPlace {
    private static final int BAND = 64;
    /** Encoded values follow light with about this power (IEC 61966-2-1 has it near 1/2.2), detail with twice that. */
    private static final double ENCODING = 1 / 2.2;
    /** The guide's samples lie this far apart, and so are means over as many pixels. */
    private static final int QUARTER = 4;

    private final FrameMaps maps;
    private final Area area;
    private final int threads;
    private @Nullable Loaded loaded;

    MapsInPlace(FrameMaps maps, Area area, int threads) {
        this.maps = maps;
        this.area = area;
        this.threads = threads;
    }

    /**
     * @param small luminance as it was spooled; {@code luma} is that, perhaps reduced further
     * @param reduction of the luminance, pixels of the frame
     */
    private record Loaded(Plane detail, Plane small, Plane luma, int reduction, Placement placement) {}

    /** @param exposureEv by how much the frame is brightened to match the others */
    void load(PlacedFrame frame, double exposureEv) throws IOException {
        float factor = (float) StrictMath.pow(2, 2 * ENCODING * exposureEv);
        SpooledPlane details = maps.detail(frame.frame().file());
        SpooledPlane lumas = maps.luma(frame.frame().file());
        Loaded before = loaded;
        // The same planes serve all frames.
        Plane detail = details.read(factor, threads, before == null ? details.blank() : before.detail);
        Plane small = lumas.read(1, threads, before == null ? lumas.blank() : before.small);
        int reduction = FrameMaps.reduction(
                frame.frame().header().width(), frame.frame().header().height());
        int further = Math.max(1, QUARTER / reduction);
        Plane luma = ReducedLuma.mean(small, further);
        loaded = new Loaded(detail, small, luma, reduction * further, frame.placement());
    }

    /** How many threads there may be. */
    int threads() {
        return threads;
    }

    void detail(Plane half) {
        draw(of().detail, 2, 2, 0, half);
    }

    void guide(Plane quarter) {
        Loaded now = of();
        // A mean over n pixels lies in their middle.
        draw(now.luma, QUARTER, now.reduction, (now.reduction - 1) / 2.0, quarter);
    }

    private void draw(Plane map, int step, double spacing, double offset, Plane target) {
        Placement placement = of().placement;
        Parallel.forEach((target.height() + BAND - 1) / BAND, threads, band -> {
            MapPlacer placer = new MapPlacer(area, step);
            float[] line = new float[target.width()];
            for (int y = band * BAND; y < Math.min(target.height(), (band + 1) * BAND); y++) {
                placer.row(map, spacing, offset, placement, y, line);
                System.arraycopy(line, 0, target.samples(), y * line.length, line.length);
            }
        });
    }

    private Loaded of() {
        Loaded now = loaded;
        if (now == null) throw new IllegalStateException("no frame was loaded");
        return now;
    }
}
