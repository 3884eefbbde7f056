package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.stook.comparison.Pictures;
import org.stook.comparison.metrics.FocusedTiles;
import org.stook.comparison.metrics.FocusedTiles.Ratios;
import org.stook.comparison.metrics.Planes;
import org.stook.comparison.metrics.TileSharpness;
import org.stook.comparison.run.Outcome;
import org.stook.comparison.run.Pipelines;
import org.stook.comparison.run.PlacedFrames;
import org.stook.comparison.run.Placing;
import org.stook.comparison.stack.Fidelity;
import org.stook.comparison.stack.FrameFiles;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import org.stook.imaging.frame.Area;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Real stacks have no truth, but the frames themselves say how sharp each place can be. The composite is held against the best frame
 * as it was taken; what it lacks is then parted into what putting frames into place took away and what the blend did.
 */
@Command(name = "real", description = "Whole jobs on real stacks: tiles as sharp as in the best frame.")
public final class RealCommand implements Callable<Integer> {
    private static final int MARGIN = 8;
    private static final double RATIO = 0.95;

    @Mixin
    private BenchOptions options = new BenchOptions();

    @Option(names = "--tile", defaultValue = "32", description = "side of a tile, pixels (${DEFAULT-VALUE})")
    private int tile = 32;

    @Override
    public Integer call() throws IOException, InterruptedException {
        Table table = Table.ofChecks(
                "real stacks: %d px tiles in which one frame is in focus, sharpness in parts of that frame's"
                        .formatted(tile));
        judge(table, "balls_10f", false);
        // Both come from light-field cameras and lie in one geometry; the first is shuffled.
        judge(table, "newspaper_12f", true);
        judge(table, "desk_10f", true);
        table.print(System.out);
        System.out.printf(
                "A ratio of \"99 %% of tiles\" is the least that 99 of 100 tiles reach; the bar is the same as %.2f there.%n"
                        + "The frames of newspaper and desk lie in one geometry as published: the reference is told so and moves"
                        + " nothing, Stook registers them.%n",
                RATIO);
        return 0;
    }

    private void judge(Table table, String set, boolean registered) throws IOException, InterruptedException {
        Path frames = framesAlone(set);
        Pipelines pipelines = options.pipelines(set);
        Sharpness mine = sharpness(Attempt.of(() -> pipelines.stook(frames)), frames, Placing.STOOK);
        Sharpness other = sharpness(
                Attempt.of(
                        () -> registered ? pipelines.reference(frames, "--registered") : pipelines.reference(frames)),
                frames,
                registered ? Placing.AS_TAKEN : Placing.REFERENCE);
        table.add(Row.of(set + ", tiles judged", 0)
                .stook(mine.taken.tiles().length)
                .reference(other.taken.tiles().length));
        table.add(Row.of(set + ", %% of tiles >= %.2f of the best frame".formatted(RATIO), 2)
                .stook(100 * mine.whole().shareReaching(RATIO))
                .reference(100 * other.whole().shareReaching(RATIO))
                .atLeast(99));
        rows(table, set + ", composite / best frame", mine, other, Sharpness::whole);
        rows(table, set + ", of this placing: best frame placed / as taken", mine, other, Sharpness::placing);
        rows(table, set + ", of this blending: composite / best frame placed", mine, other, Sharpness::blending);
        table.add(Row.of(set + ", blending: %% of tiles >= %.2f of the best frame placed".formatted(RATIO), 2)
                .stook(100 * mine.blending().shareReaching(RATIO))
                .reference(100 * other.blending().shareReaching(RATIO)));
    }

    private interface Part {
        Ratios of(Sharpness sharpness);
    }

    private static void rows(Table table, String what, Sharpness mine, Sharpness other, Part part) {
        ToDoubleFunction<Sharpness> middle = s -> part.of(s).reachedBy(0.5);
        ToDoubleFunction<Sharpness> almostAll = s -> part.of(s).reachedBy(0.99);
        table.add(
                Row.of(what + ", median", 3).stook(middle.applyAsDouble(mine)).reference(middle.applyAsDouble(other)));
        table.add(Row.of(what + ", 99 % of tiles", 3)
                .stook(almostAll.applyAsDouble(mine))
                .reference(almostAll.applyAsDouble(other)));
    }

    /**
     * How sharp a job's parts are.
     *
     * @param taken the best frames as they were taken
     * @param placed the best frames, drawn into place as the pipeline does
     */
    private record Sharpness(TileSharpness composite, FocusedTiles taken, FocusedTiles placed) {
        static final Sharpness NONE = new Sharpness(
                new TileSharpness(new double[0], new double[0]),
                new FocusedTiles(new int[0], new double[0]),
                new FocusedTiles(new int[0], new double[0]));

        Ratios whole() {
            return taken.of(composite);
        }

        Ratios placing() {
            return placed.over(taken);
        }

        Ratios blending() {
            return placed.of(composite);
        }
    }

    private Sharpness sharpness(@Nullable Outcome outcome, Path frames, Placing placing) throws IOException {
        if (outcome == null) return Sharpness.NONE;
        Area whole = outcome.commonArea();
        Area inside = new Area(MARGIN, MARGIN, whole.width() - 2 * MARGIN, whole.height() - 2 * MARGIN);
        Area judged = new Area(whole.x() + MARGIN, whole.y() + MARGIN, inside.width(), inside.height());
        FocusedTiles taken = FocusedTiles.of(tiles(PlacedFrames.of(outcome, frames, Placing.AS_TAKEN, judged)));
        FocusedTiles placed = taken.withBestOf(tiles(PlacedFrames.of(outcome, frames, placing, judged)));
        return new Sharpness(
                TileSharpness.of(Planes.luma(Fidelity.cut(Pictures.read(outcome.composite()), inside)), tile),
                taken,
                placed);
    }

    private List<TileSharpness> tiles(PlacedFrames frames) throws IOException {
        List<TileSharpness> tiles = new ArrayList<>();
        for (int i = 0; i < frames.count(); i++) tiles.add(TileSharpness.of(Planes.luma(frames.frame(i)), tile));
        return tiles;
    }

    /** The folder of the set holds notes beside the frames. */
    private Path framesAlone(String set) throws IOException {
        Path folder = Files.createDirectories(options.stacks().resolve(set));
        for (Path file : FrameFiles.in(options.data(set))) {
            Path link = folder.resolve(file.getFileName());
            if (!Files.exists(link)) Files.createSymbolicLink(link, file.toRealPath());
        }
        return folder;
    }
}
