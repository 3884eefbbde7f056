package org.stook.imaging.composite;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.stook.imaging.composite.FrameRecord.Role;
import org.stook.imaging.composite.Registered.PlacedFrame;
import org.stook.imaging.crop.LostBorder;
import org.stook.imaging.frame.Area;
import org.stook.imaging.score.Score;

/** What was made of what, with which settings: enough to repeat it. Its JSON form is described by report-1.schema.json. */
public final class ComposeReport {
    private final Recipe recipe;
    private final Surveyed surveyed;
    private final Registered registered;
    private final Toning toning;
    private final Score score;
    private final Map<String, Double> seconds;
    private final String resultSha256;

    ComposeReport(
            Recipe recipe,
            Surveyed surveyed,
            Registered registered,
            Toning toning,
            Score score,
            Map<String, Double> seconds,
            String resultSha256) {
        this.recipe = recipe;
        this.surveyed = surveyed;
        this.registered = registered;
        this.toning = toning;
        this.score = score;
        this.seconds = seconds;
        this.resultSha256 = resultSha256;
    }

    /** File name of the reference frame. */
    public String reference() {
        return surveyed.referenceFrame().name();
    }

    public Recipe recipe() {
        return recipe;
    }

    /** Part of the reference frame that the composite shows. */
    public Area commonArea() {
        return registered.area();
    }

    public LostBorder lostBorder() {
        return LostBorder.of(
                surveyed.referenceFrame().header().width(),
                surveyed.referenceFrame().header().height(),
                registered.area());
    }

    public String model() {
        return registered.model();
    }

    /**
     * How far parts at other depths are off at the ends of the sweep because one transform per frame cannot place near and
     * far parts at once, pixels; 0 where nothing beyond chance was found.
     */
    public double parallaxPx() {
        return registered.parallaxPx();
    }

    /** How sure the order of focus is, 0 to 1. */
    public double orderConfidence() {
        return surveyed.survey().confidence();
    }

    /** Frames that came at another place than their focus gives them. */
    public List<String> misplaced() {
        return surveyed.misplaced();
    }

    /** Where and how sharp each frame of the sweep is. */
    public FocusTable focus() {
        return FocusTable.of(surveyed);
    }

    public Score score() {
        return score;
    }

    /** Seconds by stage. */
    public Map<String, Double> seconds() {
        return seconds;
    }

    /** SHA-256 of the TIFF file. */
    public String resultSha256() {
        return resultSha256;
    }

    /** Every file of the stack: blended ones in sweep order, then those outside the span, then strays. */
    public List<FrameRecord> frames() {
        List<FrameRecord> all = new ArrayList<>();
        for (int i = 0; i < registered.frames().size(); i++) {
            PlacedFrame f = registered.frames().get(i);
            Role role = f.frame().equals(surveyed.referenceFrame()) ? Role.REFERENCE : Role.BLENDED;
            all.add(record(f, role, toning.exposureEv(i)));
        }
        registered.outside().forEach(f -> all.add(record(f, Role.OUTSIDE_SPAN, 0)));
        all.addAll(registered.unplaced());
        all.addAll(surveyed.strays());
        return all;
    }

    public String toJson() {
        return ReportWriter.write(this);
    }

    private static FrameRecord record(PlacedFrame f, Role role, double exposureEv) {
        return new FrameRecord(
                f.frame().name(), f.frame().sha256(), role, f.doubt(), Optional.of(f.placement()), exposureEv);
    }
}
