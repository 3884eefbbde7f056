package org.stook.app.review;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.stook.imaging.blend.BlendMethods;

/** Gathers what a page shows of a published run. */
@Component
public class Dossier {
    /**
     * All that a review shows.
     *
     * @param hasTiles whether there is a deep zoom
     * @param strip blended frames
     * @param focus plot of sharpness, if it was recorded for two frames or more
     * @param drift plots of shift, rotation and scale, in this order; empty for a single frame
     * @param drifts the same in numbers
     * @param open sentences on ends of the sweep that lie inside the subject
     */
    public record Case(
            long run,
            RunRecord record,
            boolean hasTiles,
            List<FrameStrip.Picture> strip,
            Optional<Chart> focus,
            List<Chart> drift,
            List<DriftChart.Drift> drifts,
            List<String> open,
            Optional<Reviews.Review> review) {}

    /** Above this share of the textured tiles an end counts as open, per cent; as the score has it. */
    private static final double OPEN = 4;

    private final Records records;
    private final RunFiles files;
    private final Reviews reviews;

    Dossier(Records records, RunFiles files, Reviews reviews) {
        this.records = records;
        this.files = files;
        this.reviews = reviews;
    }

    /** Empty if the run is not published or its record is out of reach. */
    public Optional<Case> of(long run) {
        return records.find(run).map(record -> {
            List<DriftChart.Drift> drifts = DriftChart.drifts(record);
            return new Case(
                    run,
                    record,
                    files.tile(run, "info.json").isPresent(),
                    FrameStrip.of(record),
                    record.focus().filter(f -> f.frames().size() > 1).map(FocusChart::of),
                    drifts.size() < 2
                            ? List.of()
                            : List.of(DriftChart.shift(drifts), DriftChart.rotation(drifts), DriftChart.scale(drifts)),
                    drifts,
                    record.focus().map(Dossier::open).orElse(List.of()),
                    reviews.of(run));
        });
    }

    /** Names of the ways to blend, the usual one first. */
    public List<String> blends() {
        return BlendMethods.all().stream().map(method -> method.name()).toList();
    }

    private static List<String> open(RunRecord.Focus focus) {
        return java.util.stream.Stream.of(
                        focus.openFirst() > OPEN
                                ? "The sweep may begin inside the subject: %.0f %% of its textured parts lie before the first frame."
                                        .formatted(focus.openFirst())
                                : "",
                        focus.openLast() > OPEN
                                ? "The sweep may end inside the subject: %.0f %% of its textured parts lie behind the last frame."
                                        .formatted(focus.openLast())
                                : "")
                .filter(sentence -> !sentence.isEmpty())
                .toList();
    }
}
