package org.stook.imaging.composite;

import java.util.List;
import org.stook.imaging.composite.Registered.PlacedFrame;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.tone.ColourSpace;
import org.stook.imaging.tone.Flicker;
import org.stook.imaging.tone.TileLight;
import org.stook.imaging.tone.Tone;

/** The tones of each blended frame: one set of settings, and what evens its exposure out to the reference frame. */
final class Toning {
    private final Recipe recipe;
    private final List<PlacedFrame> frames;
    private final List<double[]> gains;
    private final ColourSpace out;

    private Toning(Recipe recipe, List<PlacedFrame> frames, List<double[]> gains, ColourSpace out) {
        this.recipe = recipe;
        this.frames = frames;
        this.gains = gains;
        this.out = out;
    }

    /** @param reference the frame whose light counts; it may lie outside the blended span */
    static Toning measure(Recipe recipe, List<PlacedFrame> frames, Sighting reference, int threads) {
        TileLight[] light = new TileLight[frames.size()];
        Parallel.forEach(light.length, threads, i -> {
            PlacedFrame f = frames.get(i);
            light[i] = TileLight.measure(f.frame().light(), f.frame().space(), f.placement());
        });
        int at = frames.stream().map(PlacedFrame::frame).toList().indexOf(reference);
        if (at < 0) at = (frames.size() - 1) / 2;
        return new Toning(recipe, frames, Flicker.gains(List.of(light), at), reference.space());
    }

    /** Tone of the frame at that rank among the blended ones. */
    Tone of(int rank) {
        return Tone.prepare(recipe.tone(), frames.get(rank).frame().space(), out, gains.get(rank));
    }

    /** The correction of a frame, mean over the channels, EV. */
    double exposureEv(int rank) {
        double sum = 0;
        for (double gain : gains.get(rank)) sum += StrictMath.log(gain) / StrictMath.log(2);
        return sum / gains.get(rank).length;
    }

    /** The largest correction of any frame, absolute, EV. */
    double largestEv() {
        double largest = 0;
        for (int i = 0; i < gains.size(); i++) largest = Math.max(largest, Math.abs(exposureEv(i)));
        return largest;
    }
}
