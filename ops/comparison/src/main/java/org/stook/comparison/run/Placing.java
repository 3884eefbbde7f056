package org.stook.comparison.run;

import org.stook.comparison.stack.Interpolation;
import org.stook.comparison.stack.Resample;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.placing.Placer;
import org.stook.imaging.placing.SourceRows;

/** How a pipeline draws a frame into a part of the reference frame; apart from the blend, so that each can be charged for its own softness. */
public interface Placing {
    /** As Stook does; every point of the area must lie {@link Placer#SUPPORT} pixels inside the frame. */
    Placing STOOK = (frame, placement, area) -> {
        Frame target = Frame.blank(area.width(), area.height(), frame.channels());
        new Placer().draw(area, SourceRows.of(frame), frame.width(), placement, target, 0);
        return target;
    };

    /** As the reference pipeline does. */
    Placing REFERENCE = (frame, placement, area) -> Resample.place(frame, placement, area, Interpolation.CUBIC);

    /** Neither softer nor crisper than the frame is: the measure of the others. */
    Placing AS_TAKEN = (frame, placement, area) -> Resample.place(frame, placement, area, Interpolation.NEARLY_EXACT);

    Frame place(Frame frame, Placement placement, Area area);
}
