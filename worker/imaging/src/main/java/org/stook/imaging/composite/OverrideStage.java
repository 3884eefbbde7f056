package org.stook.imaging.composite;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.stook.imaging.blend.Blended;
import org.stook.imaging.composite.region.RegionMask;
import org.stook.imaging.composite.region.RegionOverride;
import org.stook.imaging.composite.region.RegionPatch;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;

/** Lays the regions that a person took from frames of their choice over the blend, in the order in which they were given. */
final class OverrideStage {
    private final ComposeOrder order;
    private final Registered registered;

    OverrideStage(ComposeOrder order, Registered registered) {
        this.order = order;
        this.registered = registered;
    }

    void run(Blended blended, PlacedFrames frames) throws CannotCompose, IOException {
        List<RegionOverride> overrides = order.recipe().overrides();
        if (overrides.isEmpty()) return;
        Area area = registered.area();
        for (RegionOverride region : overrides) {
            int rank = rank(region.frame());
            RegionMask mask = new RegionMask(region);
            Area box = mask.bounds(area).orElseThrow(() -> outside(region));
            Area here = new Area(box.x() - area.x(), box.y() - area.y(), box.width(), box.height());
            Frame part = frames.part(rank, here, order.threads());
            new RegionPatch(rank, part, here).layOver(blended, mask, area, order.threads());
        }
    }

    private int rank(String name) throws CannotCompose {
        for (int i = 0; i < registered.frames().size(); i++) {
            if (registered.frames().get(i).frame().name().equals(name)) return i;
        }
        throw new CannotCompose(
                "override-missing",
                "A region is to be taken from frame %s, which is not among the blended frames.".formatted(name));
    }

    private static CannotCompose outside(RegionOverride region) {
        RegionOverride.Point first = region.outline().get(0);
        return new CannotCompose(
                "override-outside",
                String.format(
                        Locale.ROOT,
                        "The region at %.0f, %.0f that is to be taken from frame %s lies outside the common area.",
                        first.x(),
                        first.y(),
                        region.frame()));
    }
}
