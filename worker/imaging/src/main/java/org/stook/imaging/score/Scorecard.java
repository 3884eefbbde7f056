package org.stook.imaging.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Turns measurements into a score. The limits are common practice as far as the trade has any, and otherwise ours; they
 * stand here only.
 */
public final class Scorecard {
    private Scorecard() {}

    public static Score judge(Measurements m) {
        return Score.of(parts(m));
    }

    private static List<Part> parts(Measurements m) {
        List<Part> parts = new ArrayList<>();
        parts.add(sharpness(m.coverage()));
        parts.add(ends(m.sweep()));
        parts.add(gaps(m.sweep()));
        parts.add(placement(m.placementErrorPx()));
        parts.add(parallax(m.parallaxPx()));
        parts.add(border(m.lostBorderPercent()));
        parts.add(clipping(m.clippedPercent()));
        parts.add(flicker(m.flickerEv()));
        parts.add(strays(m.straysPercent()));
        return parts;
    }

    private static Part sharpness(Coverage c) {
        String sentence = c.textured() == 0
                ? "No part of the subject has enough texture to judge sharpness."
                : say("%d of %d textured tiles are as sharp as the sharpest frame.", c.sharp(), c.textured());
        return Part.lessIsBetter("sharpness", c.softPercent(), "%", 3, 12, sentence);
    }

    private static Part ends(Sweep sweep) {
        double first = sweep.openFirstPercent();
        double last = sweep.openLastPercent();
        String sentence =
                say("%.1f %% of the textured tiles lie before the first frame, %.1f %% behind the last", first, last)
                        + (Math.max(first, last) > 4
                                ? "; the sweep may end inside the subject."
                                : "; the sweep reaches over the subject.");
        return sweep.frames() < 4
                ? new Part("ends", 0, "%", 100, Verdict.ACCEPT, "Too few frames to judge the ends of the sweep.")
                : Part.lessIsBetter("ends", Math.max(first, last), "%", 4, 20, sentence)
                        .atWorstLook();
    }

    private static Part gaps(Sweep sweep) {
        double most =
                sweep.gaps().stream().mapToDouble(Sweep.Gap::missing).max().orElse(0);
        String sentence = sweep.gaps().isEmpty()
                ? "No step of focus is far wider than the others."
                : sweep.gaps().stream()
                        .limit(3)
                        .map(g -> say(
                                "Between %s and %s focus steps as if %.0f or more frames were missing.",
                                g.before(), g.after(), Math.max(1, g.missing())))
                        .collect(Collectors.joining(" "));
        return Part.lessIsBetter("gaps", most, "frames", 0.5, 5, sentence).atWorstLook();
    }

    private static Part placement(double px) {
        return Part.lessIsBetter(
                "placement", px, "px", 0.7, 2, say("Frames are placed to within %.2f px at the corners.", px));
    }

    private static Part parallax(double px) {
        String sentence = px == 0
                ? "Near and far parts keep their places from frame to frame."
                : say(
                        "Near and far parts are up to %.2f px apart at the ends of the sweep; one placement per frame cannot mend that.",
                        px);
        return Part.lessIsBetter("parallax", px, "px", 1.5, 6, sentence).atWorstLook();
    }

    private static Part border(double percent) {
        return Part.lessIsBetter(
                        "border",
                        percent,
                        "%",
                        20,
                        40,
                        say("The common area leaves out %.1f %% of the frame.", percent))
                .atWorstLook();
    }

    private static Part clipping(double percent) {
        return Part.lessIsBetter(
                        "clipping",
                        percent,
                        "%",
                        2,
                        10,
                        say("%.2f %% of the samples are at the end of the scale.", percent))
                .atWorstLook();
    }

    private static Part flicker(double ev) {
        return Part.lessIsBetter(
                        "flicker",
                        ev,
                        "EV",
                        0.3,
                        1,
                        say("Exposure was evened out by up to %.3f EV between frames.", ev))
                .atWorstLook();
    }

    private static Part strays(double percent) {
        return Part.lessIsBetter("strays", percent, "%", 25, 50, say("%.0f %% of the frames were set aside.", percent))
                .atWorstLook();
    }

    private static String say(String format, Object... args) {
        return String.format(Locale.ROOT, format, args);
    }
}
