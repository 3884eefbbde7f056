package org.stook.imaging.composite;

import java.util.List;
import java.util.Locale;
import org.stook.imaging.crop.LostBorder;
import org.stook.imaging.frame.Area;
import org.stook.imaging.score.Part;
import org.stook.imaging.score.Score;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The JSON of a report and of a score; schema: report-1.schema.json beside this class. */
final class ReportWriter {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
    private static final List<String> STAGES =
            List.of(Composition.SURVEY, Composition.REGISTER, Composition.BLEND, Composition.FINISH, Composition.SCORE);

    private ReportWriter() {}

    static String write(ComposeReport report) {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("schema", "stook-report-1");
        node.put("engineVersion", EngineVersion.current());
        node.put("reference", report.reference());
        area(node.putObject("commonArea"), report.commonArea());
        border(node.putObject("lostBorder"), report.lostBorder());
        node.put("model", report.model());
        node.put("parallaxPx", report.parallaxPx());
        node.put("orderConfidence", report.orderConfidence());
        report.misplaced().forEach(node.putArray("misplaced")::add);
        ArrayNode frames = node.putArray("frames");
        report.frames().forEach(f -> frame(frames.addObject(), f));
        focus(node.putObject("focus"), report.focus());
        node.set("settings", RecipeWriter.node(report.recipe()));
        ObjectNode timings = node.putObject("timings");
        for (String stage : STAGES) timings.put(stage, report.seconds().getOrDefault(stage, 0.0));
        score(node.putObject("score"), report.score());
        node.put("resultSha256", report.resultSha256());
        return MAPPER.writeValueAsString(node);
    }

    private static void area(ObjectNode node, Area area) {
        node.put("x", area.x()).put("y", area.y()).put("width", area.width()).put("height", area.height());
    }

    private static void border(ObjectNode node, LostBorder lost) {
        node.put("left", lost.left())
                .put("top", lost.top())
                .put("right", lost.right())
                .put("bottom", lost.bottom());
        node.put("percent", lost.percent());
    }

    private static void frame(ObjectNode node, FrameRecord frame) {
        node.put("file", frame.file());
        node.put("sha256", frame.sha256());
        node.put("role", frame.role().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        node.put("reason", frame.reason());
        if (frame.placement().isPresent()) {
            ArrayNode numbers = node.putArray("placement");
            for (double number : frame.placement().get().toArray()) numbers.add(number);
        } else {
            node.putNull("placement");
        }
        node.put("exposureEv", frame.exposureEv());
    }

    private static void focus(ObjectNode node, FocusTable table) {
        node.put("columns", table.columns()).put("rows", table.rows());
        node.put("openFirstPercent", table.openFirstPercent()).put("openLastPercent", table.openLastPercent());
        ArrayNode gaps = node.putArray("gaps");
        for (FocusTable.Gap gap : table.gaps()) {
            gaps.addObject()
                    .put("before", gap.before())
                    .put("after", gap.after())
                    .put("missing", gap.missing());
        }
        ArrayNode frames = node.putArray("frames");
        for (FocusTable.Row row : table.frames()) {
            ObjectNode frame = frames.addObject().put("file", row.file()).put("position", row.position());
            frame.put("sharpestPercent", row.sharpestPercent());
            row.sharpness().forEach(frame.putArray("sharpness")::add);
        }
    }

    private static void score(ObjectNode node, Score score) {
        node.put("total", score.total());
        node.put("verdict", score.verdict().name());
        ArrayNode parts = node.putArray("parts");
        for (Part part : score.parts()) {
            parts.addObject()
                    .put("name", part.name())
                    .put("value", part.value())
                    .put("unit", part.unit())
                    .put("points", part.points())
                    .put("verdict", part.verdict().name())
                    .put("sentence", part.sentence());
        }
    }
}
