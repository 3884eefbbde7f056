package org.stook.scenes.file;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Truth;

/** The numbers of a bracket's truth as JSON. */
final class TruthJson {
    /** Reach of the silhouette band, pixels. */
    static final int BAND = 4;

    private final Bracket bracket;
    private final Truth truth;
    private final BracketWriter files;

    TruthJson(Bracket bracket, Truth truth, BracketWriter files) {
        this.bracket = bracket;
        this.truth = truth;
        this.files = files;
    }

    String text() {
        BracketPlan plan = bracket.plan();
        String frames = IntStream.range(0, files.files()).mapToObj(this::frame).collect(Collectors.joining(",\n    "));
        return String.format(
                Locale.ROOT,
                """
                {
                  "subject": "%s",
                  "title": "%s",
                  "width": %d,
                  "height": %d,
                  "seed": %d,
                  "reference": %d,
                  "nearest": %s,
                  "farthest": %s,
                  "depthLevelsPerFrame": 256,
                  "silhouetteReach": %d,
                  "frames": [
                    %s
                  ]
                }
                """,
                bracket.subject().name(),
                bracket.subject().title(),
                plan.width(),
                plan.height(),
                plan.seed(),
                plan.reference(),
                plan.span().near(),
                plan.span().far(),
                BAND,
                frames);
    }

    private String frame(int file) {
        int index = files.frameOf(file);
        return String.format(
                Locale.ROOT,
                "{\"file\": \"%s\", \"frame\": %d, \"placement\": %s, \"gain\": %s, \"focusDistance\": %.4f}",
                files.fileName(file),
                index,
                Arrays.toString(truth.placement(index)),
                truth.gain(index),
                bracket.sweep().objectDistance(index));
    }
}
