package org.stook.imaging.composite;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.stook.imaging.composite.Registered.PlacedFrame;
import org.stook.imaging.crop.CommonArea;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.placing.Placer;
import org.stook.imaging.registration.Placed;
import org.stook.imaging.registration.Registration;

/** Puts every frame of the sweep into its place against the reference frame and finds the area they share. */
final class RegisterStage {
    private static final String SHAKEN =
            ": less sharp than its place in the sweep promises: it was shaken or the subject moved";

    private final ComposeOrder order;
    private final Surveyed surveyed;
    private final List<PlacedFrame> placed = new ArrayList<>();
    private final List<FrameRecord> unplaced = new ArrayList<>();

    RegisterStage(ComposeOrder order, Surveyed surveyed) {
        this.order = order;
        this.surveyed = surveyed;
    }

    Registered run(Registration found) throws CannotCompose {
        sort(found);
        if (placed.size() * 2 < surveyed.sweep().size()) {
            throw new CannotCompose(
                    "cannot-register",
                    "Only %d of %d frames can be placed on the reference frame %s; the others show too little in common with it."
                            .formatted(
                                    placed.size(),
                                    surveyed.sweep().size(),
                                    surveyed.referenceFrame().name()));
        }
        List<PlacedFrame> span = span();
        List<PlacedFrame> outside =
                placed.stream().filter(f -> !span.contains(f)).toList();
        double worst = max(span, PlacedFrame::cornerErrorPx);
        return new Registered(
                span, outside, List.copyOf(unplaced), model(found), worst, found.parallaxPx(), area(span));
    }

    private void sort(Registration found) {
        for (int i = 0; i < surveyed.sweep().size(); i++) {
            Sighting frame = surveyed.sweep().get(i);
            Placed at = found.frames().get(i);
            String doubt = at.doubt()
                    .map(d -> frame.name() + ": " + d.sentence())
                    .orElse(surveyed.isShaken(i) ? frame.name() + SHAKEN : "");
            if (at.registered()) placed.add(new PlacedFrame(frame, at.placement(), at.cornerErrorPx(), doubt));
            else unplaced.add(FrameRecord.stray(frame.name(), frame.sha256(), doubt));
        }
    }

    private List<PlacedFrame> span() throws CannotCompose {
        if (order.recipe().span().isEmpty()) return List.copyOf(placed);
        Recipe.Span span = order.recipe().span().get();
        int first = rank(span.first());
        int last = rank(span.last());
        return List.copyOf(placed.subList(Math.min(first, last), Math.max(first, last) + 1));
    }

    private int rank(String name) throws CannotCompose {
        for (int i = 0; i < placed.size(); i++) {
            if (placed.get(i).frame().name().equals(name)) return i;
        }
        throw new CannotCompose("span-missing", "The span names frame %s, which is not in the sweep.".formatted(name));
    }

    private Area area(List<PlacedFrame> span) throws CannotCompose {
        List<Placement> placements =
                new ArrayList<>(span.stream().map(PlacedFrame::placement).toList());
        placements.add(Placement.identity());
        Sighting any = surveyed.referenceFrame();
        return new CommonArea(
                        any.header().width(),
                        any.header().height(),
                        Placer.SUPPORT,
                        order.recipe().crop())
                .of(placements)
                .orElseThrow(() -> new CannotCompose(
                        "no-common-area",
                        "The frames of the sweep share no usable area; the camera or the subject moved too far."));
    }

    private static String model(Registration found) {
        return found.model().name().toLowerCase(Locale.ROOT);
    }

    private static double max(List<PlacedFrame> frames, ToDoubleFunction<PlacedFrame> value) {
        return frames.stream().mapToDouble(value).max().orElse(0);
    }
}
