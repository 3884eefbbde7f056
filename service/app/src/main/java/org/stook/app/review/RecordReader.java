package org.stook.app.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;
import tools.jackson.databind.JsonNode;

/** Reads the JSON of a run's record. */
final class RecordReader {
    private RecordReader() {}

    static RunRecord read(JsonNode all) {
        JsonNode area = all.path("commonArea");
        JsonNode lost = all.path("lostBorder");
        List<RunRecord.Frame> frames = new ArrayList<>();
        all.path("frames").forEach(frame -> frames.add(frame(frame)));
        return new RunRecord(
                text(all, "reference"),
                new Area(whole(area, "x"), whole(area, "y"), whole(area, "width"), whole(area, "height")),
                new RunRecord.Border(
                        whole(lost, "left"),
                        whole(lost, "top"),
                        whole(lost, "right"),
                        whole(lost, "bottom"),
                        lost.path("percent").doubleValue(0)),
                text(all, "model"),
                frames,
                all.path("focus").isObject() ? Optional.of(focus(all.path("focus"))) : Optional.empty(),
                all.path("settings"));
    }

    private static RunRecord.Frame frame(JsonNode frame) {
        return new RunRecord.Frame(
                text(frame, "file"),
                text(frame, "sha256"),
                text(frame, "role"),
                text(frame, "reason"),
                placement(frame.path("placement")),
                frame.path("exposureEv").doubleValue(0));
    }

    private static @Nullable Placement placement(JsonNode numbers) {
        if (!numbers.isArray() || numbers.size() != 9) {
            return null;
        }
        double[] values = new double[9];
        for (int i = 0; i < 9; i++) values[i] = numbers.get(i).doubleValue();
        return Placement.of(values);
    }

    private static RunRecord.Focus focus(JsonNode focus) {
        List<RunRecord.Gap> gaps = new ArrayList<>();
        focus.path("gaps")
                .forEach(gap -> gaps.add(new RunRecord.Gap(
                        text(gap, "before"),
                        text(gap, "after"),
                        gap.path("missing").doubleValue(0))));
        List<RunRecord.FocusFrame> frames = new ArrayList<>();
        focus.path("frames").forEach(frame -> {
            List<Integer> sharpness = new ArrayList<>();
            frame.path("sharpness").forEach(value -> sharpness.add(value.intValue()));
            frames.add(new RunRecord.FocusFrame(
                    text(frame, "file"),
                    frame.path("position").doubleValue(0),
                    frame.path("sharpestPercent").doubleValue(0),
                    List.copyOf(sharpness)));
        });
        return new RunRecord.Focus(
                whole(focus, "columns"),
                whole(focus, "rows"),
                focus.path("openFirstPercent").doubleValue(0),
                focus.path("openLastPercent").doubleValue(0),
                gaps,
                frames);
    }

    private static String text(JsonNode node, String name) {
        return node.path(name).stringValue("");
    }

    private static int whole(JsonNode node, String name) {
        return node.path(name).intValue(0);
    }
}
