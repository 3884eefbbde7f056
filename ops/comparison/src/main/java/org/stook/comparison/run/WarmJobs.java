package org.stook.comparison.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.stook.comparison.reference.ReferencePipeline;
import org.stook.imaging.composite.CannotCompose;
import org.stook.imaging.composite.ComposeOrder;
import org.stook.imaging.composite.Composition;
import org.stook.imaging.composite.Progress;
import org.stook.imaging.composite.Recipe;
import org.stook.imaging.composite.rehearsal.Rehearsal;

/**
 * The same job again and again in one process, as a worker that stays up does it: by then the runtime has compiled what is
 * used much. As such a worker does, Stook rehearses first.
 */
public final class WarmJobs {
    /** So many of the last jobs are timed. */
    public static final int TIMED = 3;

    private final List<Path> frames;
    private final Path out;
    private final int threads;

    /** @param out where composites go, each over the one before */
    public WarmJobs(List<Path> frames, Path out, int threads) {
        this.frames = List.copyOf(frames);
        this.out = out;
        this.threads = threads;
    }

    /** The pipelines there are. */
    public enum Pipeline {
        STOOK,
        REFERENCE
    }

    /**
     * Seconds that jobs took.
     *
     * @param first the first of all
     * @param last median of the last {@link #TIMED}
     */
    public record Times(double first, double last) {
        public static Times read(Path file) throws IOException {
            String[] fields = Files.readString(file).split(" ", 2);
            return new Times(Double.parseDouble(fields[0]), Double.parseDouble(fields[1]));
        }

        public void write(Path file) throws IOException {
            Files.writeString(file, first + " " + last);
        }
    }

    public Times run(Pipeline pipeline, int times) throws IOException {
        if (pipeline == Pipeline.STOOK) rehearse();
        double[] seconds = new double[times];
        for (int i = 0; i < times; i++) {
            long start = System.nanoTime();
            if (pipeline == Pipeline.STOOK) stook((stage, work) -> work.run());
            else reference();
            seconds[i] = (System.nanoTime() - start) / 1e9;
        }
        double[] last = Arrays.copyOfRange(seconds, Math.max(0, times - TIMED), times);
        Arrays.sort(last);
        return new Times(seconds[0], last[last.length / 2]);
    }

    private void rehearse() throws IOException {
        try {
            Rehearsal.run(Path.of(System.getProperty("java.io.tmpdir")), threads, Progress.silent());
        } catch (CannotCompose e) {
            throw new IllegalStateException("the rehearsal makes no composite", e);
        }
    }

    /** A stage of a composition, or whoever watches it. */
    public interface Stage {
        void run() throws IOException, CannotCompose;
    }

    /** Told of each stage of a composition; has to run it. */
    public interface Watch {
        void stage(String name, Stage stage) throws IOException, CannotCompose;
    }

    /** One job of Stook's, stage by stage. */
    public void stook(Watch watch) throws IOException {
        ComposeOrder order = new ComposeOrder(frames, Recipe.standard(), threads);
        try (Composition composition = new Composition(order, Progress.silent())) {
            watch.stage(Composition.SURVEY, composition::survey);
            watch.stage(Composition.REGISTER, composition::register);
            watch.stage(Composition.BLEND, composition::blend);
            watch.stage(Composition.FINISH, () -> composition.finish(out, Optional.empty()));
            watch.stage(Composition.SCORE, composition::score);
        } catch (CannotCompose e) {
            throw new IllegalStateException("frames that were rendered for this bench make no composite", e);
        }
    }

    private void reference() throws IOException {
        new ReferencePipeline(new ReferencePipeline.Settings(frames.size() / 2, true, threads)).run(frames, out);
    }
}
