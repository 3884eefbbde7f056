package org.stook.imaging.composite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.stook.imaging.codec.CaptureTime;
import org.stook.imaging.codec.FrameHeader;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.survey.Stray;
import org.stook.imaging.survey.SweepSurvey;

/** Looks at every file once: which are frames, which belong together, in which order their focus runs. */
final class SurveyStage {
    private final ComposeOrder order;
    private final Progress progress;
    private final FirstLook look;
    private final List<FrameRecord> strays = new ArrayList<>();

    SurveyStage(ComposeOrder order, DecodedFrames frames, FrameMaps maps, Progress progress) {
        this.order = order;
        this.progress = progress;
        this.look = new FirstLook(frames, maps);
    }

    Surveyed run() throws CannotCompose, IOException {
        List<Sighting> frames = ofOneKind(inCaptureOrder(lookAtAll()));
        if (frames.isEmpty()) {
            throw new CannotCompose(
                    "no-frames",
                    "None of the %d files is a usable frame%s"
                            .formatted(order.frames().size(), why()));
        }
        SweepSurvey survey =
                SweepSurvey.of(frames.stream().map(Sighting::survey).toList());
        for (Stray stray : survey.strays()) {
            Sighting frame = frames.get(stray.frame());
            String twin = stray.twin().isPresent()
                    ? " " + frames.get(stray.twin().getAsInt()).name()
                    : "";
            strays.add(FrameRecord.stray(
                    frame.name(), frame.sha256(), frame.name() + ": " + stray.sentence() + twin + "; set aside."));
        }
        List<Sighting> sweep =
                Arrays.stream(survey.order()).mapToObj(frames::get).toList();
        if (sweep.isEmpty()) throw new CannotCompose("no-frames", "Every frame was set aside" + why());
        List<String> misplaced =
                survey.misplaced().stream().map(i -> frames.get(i).name()).toList();
        return new Surveyed(sweep, reference(sweep), List.copyOf(strays), misplaced, survey);
    }

    private List<Sighting> lookAtAll() throws IOException {
        int count = order.frames().size();
        FirstLook.Result[] results = new FirstLook.Result[count];
        AtomicInteger done = new AtomicInteger();
        try {
            Parallel.forEach(count, order.threads(), i -> {
                progress.at(Composition.SURVEY, (double) done.getAndIncrement() / count);
                // From the last to the first: those that stay decoded are then those that the blend begins with.
                int file = count - 1 - i;
                results[file] = lookAt(order.frames().get(file));
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        List<Sighting> seen = new ArrayList<>();
        for (FirstLook.Result result : results) {
            result.frame().ifPresent(seen::add);
            result.stray().ifPresent(strays::add);
        }
        return seen;
    }

    private FirstLook.Result lookAt(Path file) {
        try {
            return look.at(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** By capture time where every frame has one, else by name. */
    private static List<Sighting> inCaptureOrder(List<Sighting> frames) {
        Comparator<Sighting> byName = Comparator.comparing(Sighting::name);
        boolean timed = frames.stream().allMatch(f -> time(f).isPresent());
        Comparator<Sighting> byTime = Comparator.comparing(f -> time(f).orElse(LocalDateTime.MIN));
        return frames.stream()
                .sorted(timed ? byTime.thenComparing(byName) : byName)
                .toList();
    }

    private static Optional<LocalDateTime> time(Sighting frame) {
        return frame.header().capture().time().map(CaptureTime::local);
    }

    /** The largest group of one size and number of channels; the others are strays. */
    private List<Sighting> ofOneKind(List<Sighting> frames) {
        Map<String, List<Sighting>> kinds = new LinkedHashMap<>();
        for (Sighting f : frames)
            kinds.computeIfAbsent(kind(f.header()), k -> new ArrayList<>()).add(f);
        List<Sighting> most = List.of();
        for (List<Sighting> kind : kinds.values()) if (kind.size() > most.size()) most = kind;
        for (Sighting f : frames) {
            if (most.contains(f)) continue;
            strays.add(FrameRecord.stray(
                    f.name(),
                    f.sha256(),
                    "%s: found %s, expected %s like most frames of the stack; set aside."
                            .formatted(
                                    f.name(), kind(f.header()), kind(most.get(0).header()))));
        }
        return most;
    }

    private static String kind(FrameHeader h) {
        return "%d x %d pixels %s".formatted(h.width(), h.height(), h.channels() == 1 ? "grey" : "colour");
    }

    private int reference(List<Sighting> sweep) throws CannotCompose {
        Optional<String> wanted = order.recipe().reference();
        if (wanted.isEmpty()) return (sweep.size() - 1) / 2;
        for (int i = 0; i < sweep.size(); i++) {
            if (sweep.get(i).name().equals(wanted.get())) return i;
        }
        throw new CannotCompose(
                "reference-missing",
                "The reference frame %s is not among the usable frames%s".formatted(wanted.get(), why()));
    }

    private String why() {
        if (strays.isEmpty()) return ".";
        return strays.stream().limit(3).map(FrameRecord::reason).reduce(":", (a, b) -> a + " " + b);
    }
}
