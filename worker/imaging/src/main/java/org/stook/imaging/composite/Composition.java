package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.blend.Blended;
import org.stook.imaging.composite.region.RegionMask;
import org.stook.imaging.composite.view.Proxies;
import org.stook.imaging.composite.view.ReviewMaps;
import org.stook.imaging.composite.view.TilePyramid;
import org.stook.imaging.crop.LostBorder;
import org.stook.imaging.registration.Registrar;
import org.stook.imaging.registration.Registration;
import org.stook.imaging.score.Measurements;
import org.stook.imaging.score.Score;
import org.stook.imaging.score.Scorecard;
import org.stook.imaging.score.Sweep;
import org.stook.imaging.survey.Coverage;

/**
 * One stack being composed. The stages are called once each, in the order in which they stand here; each uses what the
 * one before found. Not for several threads at once (it uses threads of its own).
 */
public final class Composition implements AutoCloseable {
    public static final String SURVEY = "survey";
    public static final String REGISTER = "register";
    public static final String BLEND = "blend";
    public static final String FINISH = "finish";
    public static final String SCORE = "score";

    private final ComposeOrder order;
    private final Progress progress;
    private final DecodedFrames decoded = new DecodedFrames();
    private final Map<String, Double> seconds = new LinkedHashMap<>();
    private @Nullable FrameMaps maps;
    private @Nullable Path proxies;
    private @Nullable Surveyed surveyed;
    private @Nullable Registration registration;
    private @Nullable Registered registered;
    private @Nullable Toning toning;
    private @Nullable BlendStage blendStage;
    private @Nullable Blended blended;
    private @Nullable FinishStage finish;
    private @Nullable String resultSha256;
    private @Nullable Score score;

    public Composition(ComposeOrder order, Progress progress) {
        this.order = order;
        this.progress = progress;
    }

    /** Looks at every file; sets aside what is no frame of this stack; finds the order of focus. */
    public void survey() throws CannotCompose, IOException {
        FrameMaps made = new FrameMaps();
        maps = made;
        surveyed = timed(SURVEY, () -> new SurveyStage(order, decoded, made, progress).run());
    }

    /** Places every frame against the reference frame and finds the common area. */
    public void register() throws CannotCompose, IOException {
        Surveyed stack = done(surveyed, SURVEY);
        place(() -> new Registrar(order.threads())
                .register(new SweepLuma(stack.sweep(), done(maps, SURVEY), progress), stack.reference()));
    }

    /**
     * The same with what an earlier composition found of the same frames, if it is that: nothing is registered then, and the
     * composite has the same bytes.
     *
     * @param placements what {@link #placements()} gave
     * @return false if they are of other frames, of another version or damaged; nothing is done then
     */
    public boolean register(String placements) throws CannotCompose, IOException {
        Optional<Registration> saved = SavedPlacements.read(placements, done(surveyed, SURVEY));
        if (saved.isPresent()) place(saved::get);
        return saved.isPresent();
    }

    private void place(Stage<Registration> finding) throws CannotCompose, IOException {
        registered = timed(REGISTER, () -> {
            Registration found = finding.run();
            registration = found;
            return new RegisterStage(order, done(surveyed, SURVEY)).run(found);
        });
    }

    /** What registration found, for {@link #register(String)}: one line of some hundred characters a frame. */
    public String placements() {
        return SavedPlacements.write(done(surveyed, SURVEY), done(registration, REGISTER));
    }

    /** Has small copies of the placed frames written while they are blended. To be called before {@link #blend()}. */
    public void keepProxies(Path folder) {
        proxies = folder;
    }

    /** Tones, places and blends all frames, and lays the settings' overrides over them. */
    public void blend() throws CannotCompose, IOException {
        Surveyed stack = done(surveyed, SURVEY);
        Registered sweep = done(registered, REGISTER);
        blended = timed(BLEND, () -> {
            Toning tones = Toning.measure(order.recipe(), sweep.frames(), stack.referenceFrame(), order.threads());
            BlendStage stage = new BlendStage(order, sweep, progress);
            toning = tones;
            blendStage = stage;
            MapsInPlace inPlace = new MapsInPlace(done(maps, SURVEY), sweep.area(), order.threads());
            return stage.run(tones, new PlacedFrames(sweep, tones, decoded, inPlace), proxies(tones));
        });
    }

    private Optional<Proxies> proxies(Toning tones) {
        Proxies.Look look =
                new Proxies.Look(tones.of(0).outputSpace(), order.recipe().finish());
        return Optional.ofNullable(proxies).map(folder -> new Proxies(folder, look, order.threads()));
    }

    /**
     * Writes the composite as 16-bit TIFF.
     *
     * @param preview where a small JPEG goes, if one is wanted
     */
    public void finish(Path master, Optional<Path> preview) throws CannotCompose, IOException {
        Surveyed stack = done(surveyed, SURVEY);
        int all = stack.sweep().size() + stack.strays().size();
        int used = done(registered, REGISTER).frames().size();
        resultSha256 = timed(FINISH, () -> {
            progress.at(FINISH, 0);
            FinishStage stage = new FinishStage(
                    done(blended, BLEND),
                    done(toning, BLEND).of(0),
                    order.recipe().finish(),
                    Imprint.of(order.recipe(), stack.referenceFrame().header(), all, used));
            finish = stage;
            if (preview.isPresent()) stage.writePreview(preview.get());
            return stage.writeMaster(master);
        });
    }

    /**
     * Writes the composite as JPEG, with the master's metadata.
     *
     * @param jpeg full size, in the master's colours
     * @param thumbnail very small, in sRGB
     */
    public void writeDerivatives(Optional<Path> jpeg, Optional<Path> thumbnail) throws IOException {
        FinishStage stage = done(finish, FINISH);
        if (jpeg.isPresent()) stage.writeDerivative(jpeg.get());
        if (thumbnail.isPresent()) stage.writeThumbnail(thumbnail.get());
    }

    /**
     * Writes the maps as 16-bit grey TIFF of the composite's size.
     *
     * @param source which frame each pixel mostly came from: the code value is its rank in the sweep, from 0
     * @param depth 256 x the position in the sweep, from 0; 65535 where nothing decided it
     */
    public void writeMaps(Optional<Path> source, Optional<Path> depth) throws IOException {
        FinishStage stage = done(finish, FINISH);
        if (source.isPresent()) stage.writeSourceMap(source.get());
        if (depth.isPresent()) stage.writeDepthMap(depth.get());
    }

    /**
     * Writes what the composite is reviewed with. After {@link #score()}.
     *
     * @param tiles folder for the composite in tiles, see {@link TilePyramid}
     * @param review folder for the reduced maps, see {@link ReviewMaps}; the one that {@link #keepProxies} was given
     */
    public void writeView(Path tiles, Path review) throws IOException {
        done(score, SCORE);
        FinishStage stage = done(finish, FINISH);
        Registered sweep = done(registered, REGISTER);
        TilePyramid.write(stage.composite(), stage.space(), tiles, order.threads());
        List<RegionMask> masks =
                order.recipe().overrides().stream().map(RegionMask::new).toList();
        new ReviewMaps(done(blended, BLEND), sweep.frames().size())
                .write(
                        review,
                        done(blendStage, BLEND).ledger().soft(),
                        (x, y) -> masks.stream()
                                .anyMatch(m -> m.weight(
                                                sweep.area().x() + x,
                                                sweep.area().y() + y)
                                        >= 0.5));
    }

    /** Judges the composite against its frames. */
    public Score score() throws CannotCompose, IOException {
        Score judged = timed(SCORE, () -> {
            progress.at(SCORE, 0);
            return Scorecard.judge(measurements());
        });
        score = judged;
        return judged;
    }

    /** The record of the finished composition. */
    public ComposeReport report() {
        return new ComposeReport(
                order.recipe(),
                done(surveyed, SURVEY),
                done(registered, REGISTER),
                done(toning, BLEND),
                done(score, SCORE),
                Map.copyOf(seconds),
                done(resultSha256, FINISH));
    }

    private Measurements measurements() {
        Surveyed stack = done(surveyed, SURVEY);
        Registered sweep = done(registered, REGISTER);
        FinishStage stage = done(finish, FINISH);
        int strays = stack.strays().size() + sweep.unplaced().size();
        int all = stack.sweep().size() + stack.strays().size();
        return new Measurements(
                done(blendStage, BLEND).ledger().compare(done(blended, BLEND).composite()),
                reach(stack),
                sweep.worstCornerErrorPx(),
                sweep.parallaxPx(),
                LostBorder.of(
                                stack.referenceFrame().header().width(),
                                stack.referenceFrame().header().height(),
                                sweep.area())
                        .percent(),
                stage.clippedPercent(order.threads()),
                done(toning, BLEND).largestEv(),
                100.0 * strays / all);
    }

    private static Sweep reach(Surveyed stack) {
        Coverage coverage = stack.survey().coverage();
        return new Sweep(
                stack.sweep().size(),
                100 * coverage.openAtFirst(),
                100 * coverage.openAtLast(),
                coverage.gaps().stream()
                        .map(g -> new Sweep.Gap(
                                stack.captured(g.before()).name(),
                                stack.captured(g.after()).name(),
                                g.steps() - 1))
                        .toList());
    }

    private interface Stage<T> {
        T run() throws CannotCompose, IOException;
    }

    private <T> T timed(String name, Stage<T> stage) throws CannotCompose, IOException {
        long start = System.nanoTime();
        T result = stage.run();
        seconds.put(name, (System.nanoTime() - start) / 1e9);
        progress.at(name, 1);
        return result;
    }

    private static <T> T done(@Nullable T result, String stage) {
        if (result == null) throw new IllegalStateException("call " + stage + "() first");
        return result;
    }

    /** Lets go of everything that was kept. */
    @Override
    public void close() throws IOException {
        decoded.close();
        if (maps != null) maps.close();
        blended = null;
        finish = null;
    }
}
