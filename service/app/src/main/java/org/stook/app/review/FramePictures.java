package org.stook.app.review;

import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.springframework.stereotype.Component;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.imaging.composite.Recipe;
import org.stook.imaging.composite.view.FrameView;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.tone.ToneSettings;

/**
 * Pictures of single frames: a part of one in its place, quickly from the small copy that was published or exactly from the
 * original; and the reference frame with other tones. Originals are decoded one at a time; only reduced ones are kept, within a fixed budget.
 */
@Component
public class FramePictures {
    private static final long BUDGET_BYTES = 48L << 20;

    /** Pixels along the longer side of what tones are tried on. */
    private static final int TRIAL_EDGE = 1200;

    private final RunFiles files;
    private final Records records;
    private final SweepFiles sweepFiles;
    private final Map<Path, FrameView> kept = new LinkedHashMap<>(16, 0.75f, true);
    private long keptBytes;

    FramePictures(RunFiles files, Records records, SweepFiles sweepFiles) {
        this.files = files;
        this.records = records;
        this.sweepFiles = sweepFiles;
    }

    /**
     * A square part of a frame around a place, from its small copy.
     *
     * @param x of the place, pixels of the composite
     * @param side of the part, pixels of the composite
     * @return JPEG, empty if there is no such frame
     */
    public Optional<byte[]> small(long run, int rank, Spot spot) throws IOException {
        Optional<Path> file = files.frame(run, rank);
        Optional<RunRecord> record = records.find(run);
        if (file.isEmpty() || record.isEmpty()) {
            return Optional.empty();
        }
        try (ImageInputStream in = ImageIO.createImageInputStream(file.get().toFile())) {
            ImageReader reader = jpegReader();
            reader.setInput(in, true, true);
            Area part = spot.within(record.get().area());
            double n = (double) record.get().area().width() / reader.getWidth(0);
            ImageReadParam parameters = reader.getDefaultReadParam();
            parameters.setSourceRegion(new Rectangle(
                    (int) ((part.x() - record.get().area().x()) / n),
                    (int) ((part.y() - record.get().area().y()) / n),
                    Math.max(1, (int) Math.ceil(part.width() / n)),
                    Math.max(1, (int) Math.ceil(part.height() / n))));
            BufferedImage cut = reader.read(0, parameters);
            reader.dispose();
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(cut, "jpeg", out);
            return Optional.of(out.toByteArray());
        }
    }

    /** Likewise pixel by pixel from the original, drawn into its place with the run's tones. */
    public Optional<byte[]> exact(long run, int rank, Spot spot) throws IOException {
        Optional<RunRecord> record = records.find(run);
        if (record.isEmpty() || rank < 0 || rank >= record.get().blended().size()) {
            return Optional.empty();
        }
        RunRecord.Frame frame = record.get().blended().get(rank);
        Placement placement = frame.placement();
        Optional<Path> original = sweepFiles.ofRun(run, frame.file());
        if (placement == null || original.isEmpty()) {
            return Optional.empty();
        }
        Recipe recipe = Recipe.parse(record.get().settings().toString());
        ToneSettings evened = recipe.tone().withExposure(clamp(recipe.tone().exposureEv() + frame.exposureEv()));
        Area part = spot.within(record.get().area());
        return Optional.of(under(original.get(), placement, part).placed(part, evened, recipe.finish()));
    }

    /** A frame of a stack with tones to try, reduced. */
    public Optional<byte[]> toned(long stack, String file, ToneSettings tone, ToneSettings finish) throws IOException {
        Optional<Path> original = sweepFiles.ofStack(stack, file);
        return original.isEmpty()
                ? Optional.empty()
                : Optional.of(reduced(original.get()).toned(tone, finish));
    }

    /** The whole reference frame as it was toned for a run, reduced. */
    public Optional<byte[]> reference(long run) throws IOException {
        Optional<RunRecord> record = records.find(run);
        Optional<Path> original = record.flatMap(r -> sweepFiles.ofRun(run, r.reference()));
        if (record.isEmpty() || original.isEmpty()) {
            return Optional.empty();
        }
        Recipe recipe = Recipe.parse(record.get().settings().toString());
        return Optional.of(reduced(original.get()).toned(recipe.tone(), recipe.finish()));
    }

    private static double clamp(double ev) {
        return Math.max(-5, Math.min(5, ev));
    }

    /** One at a time, for a format that must be read as a whole takes hundreds of megabytes. */
    private synchronized FrameView under(Path file, Placement placement, Area part) throws IOException {
        try {
            return FrameView.under(file, placement, part);
        } catch (UnreadableFrame e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private synchronized FrameView reduced(Path file) throws IOException {
        FrameView known = kept.get(file);
        if (known != null) {
            return known;
        }
        try {
            FrameView view = FrameView.reduced(file, TRIAL_EDGE);
            keep(file, view);
            return view;
        } catch (UnreadableFrame e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private void keep(Path file, FrameView view) {
        keptBytes += view.bytes();
        kept.put(file, view);
        for (Iterator<FrameView> oldest = kept.values().iterator(); keptBytes > BUDGET_BYTES && oldest.hasNext(); ) {
            keptBytes -= oldest.next().bytes();
            oldest.remove();
        }
    }

    private static ImageReader jpegReader() {
        return ImageIO.getImageReadersByFormatName("jpeg").next();
    }
}
