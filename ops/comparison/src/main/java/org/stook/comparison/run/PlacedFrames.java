package org.stook.comparison.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.stook.comparison.Pictures;
import org.stook.comparison.reference.ReferenceBlend;
import org.stook.imaging.blend.Blend;
import org.stook.imaging.blend.BlendMethod;
import org.stook.imaging.blend.BlendPlan;
import org.stook.imaging.blend.Blended;
import org.stook.imaging.blend.WholeFrame;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;

/** Frames that lie in one geometry, read again whenever they are asked for; and what the blends alone make of them. */
public interface PlacedFrames {
    /** How many, in sweep order. */
    int count();

    Frame frame(int index) throws IOException;

    /** Frames in memory. */
    static PlacedFrames of(List<Frame> frames) {
        return new PlacedFrames() {
            @Override
            public int count() {
                return frames.size();
            }

            @Override
            public Frame frame(int index) {
                return frames.get(index);
            }
        };
    }

    /** The frames of a whole job, read from their folder, put into place as the job did or in another way. */
    static PlacedFrames of(Outcome outcome, Path folder, Placing placing, Area area) {
        List<String> files = outcome.files();
        return new PlacedFrames() {
            @Override
            public int count() {
                return files.size();
            }

            @Override
            public Frame frame(int index) throws IOException {
                String file = files.get(index);
                Placement placement = Objects.requireNonNull(outcome.frames().get(file));
                return placing.place(Pictures.read(folder.resolve(file)), placement, area);
            }
        };
    }

    /** Stook's blend of this method, clipped to 0..1 as its encoder does. */
    default Frame blendedBy(BlendMethod method, int threads) throws IOException {
        Frame first = frame(0);
        Blend blend = method.begin(new BlendPlan(first.width(), first.height(), first.channels(), count(), threads));
        for (int pass = 0; pass < blend.passes(); pass++) {
            for (int i = 0; i < count(); i++) blend.add(pass, i, new WholeFrame(frame(i)));
        }
        Blended blended = blend.finish();
        for (int c = 0; c < first.channels(); c++) {
            float[] samples = blended.composite().plane(c).samples();
            for (int i = 0; i < samples.length; i++) samples[i] = Math.min(1, Math.max(0, samples[i]));
        }
        return blended.composite();
    }

    /** The reference pipeline's blend. */
    default Frame blendedByReference() throws IOException {
        Frame first = frame(0);
        try (ReferenceBlend blend = new ReferenceBlend(first.width(), first.height())) {
            for (int i = 0; i < count(); i++) blend.add(frame(i));
            return blend.finish();
        }
    }
}
