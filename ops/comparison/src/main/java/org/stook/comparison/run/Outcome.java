package org.stook.comparison.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * What one pipeline made of one stack.
 *
 * @param composite file, covers {@code commonArea} of the reference frame
 * @param commonArea in pixels of the reference frame
 * @param frames those that were placed, by file name
 * @param roles what the pipeline calls each file
 * @param remarks what the pipeline says of a file, where it says anything
 * @param seconds by stage, as the pipeline tells
 * @param usage of the process
 */
public record Outcome(
        Path composite,
        Area commonArea,
        Map<String, Placement> frames,
        Map<String, String> roles,
        Map<String, String> remarks,
        Map<String, Double> seconds,
        Usage usage) {

    static Outcome read(Path composite, Path report, Usage usage) throws IOException {
        JsonNode root = JsonMapper.shared().readTree(report.toFile());
        JsonNode area = root.required("commonArea");
        Map<String, Placement> frames = new LinkedHashMap<>();
        Map<String, String> roles = new LinkedHashMap<>();
        Map<String, String> remarks = new LinkedHashMap<>();
        for (JsonNode frame : root.required("frames")) {
            String file =
                    Path.of(frame.required("file").asString()).getFileName().toString();
            roles.put(file, frame.required("role").asString());
            String reason = frame.path("reason").asString("");
            if (!reason.isEmpty()) remarks.put(file, reason.replaceFirst("^\\Q" + file + "\\E: ", ""));
            JsonNode placement = frame.get("placement");
            if (placement != null && placement.isArray() && placement.size() == 9)
                frames.put(file, placement(placement));
        }
        for (JsonNode file : root.path("misplaced")) remarks.putIfAbsent(file.asString(), "misplaced");
        Map<String, Double> seconds = new LinkedHashMap<>();
        JsonNode stages = root.has("timings") ? root.get("timings") : root.get("seconds");
        if (stages != null)
            stages.properties()
                    .forEach(e -> seconds.put(e.getKey(), e.getValue().asDouble()));
        Area common = new Area(
                area.required("x").asInt(),
                area.required("y").asInt(),
                area.required("width").asInt(),
                area.required("height").asInt());
        return new Outcome(composite, common, frames, roles, remarks, seconds, usage);
    }

    private static Placement placement(JsonNode numbers) {
        double[] m = new double[9];
        for (int i = 0; i < 9; i++) m[i] = numbers.get(i).asDouble();
        return Placement.of(m);
    }

    /** The file whose geometry the composite has: it is called reference, or else lies at the identity. */
    public String referenceFile() {
        Optional<String> named = roles.entrySet().stream()
                .filter(e -> e.getValue().equalsIgnoreCase("reference"))
                .map(Map.Entry::getKey)
                .findFirst();
        return named.orElseGet(() -> frames.entrySet().stream()
                .filter(e -> e.getValue().equals(Placement.identity()))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no reference frame in the report beside " + composite)));
    }

    /** Placed files in the order of the report. */
    public List<String> files() {
        return new ArrayList<>(frames.keySet());
    }
}
