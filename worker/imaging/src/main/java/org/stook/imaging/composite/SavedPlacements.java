package org.stook.imaging.composite;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.registration.Doubt;
import org.stook.imaging.registration.Model;
import org.stook.imaging.registration.Placed;
import org.stook.imaging.registration.Registration;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What registration found, as text, and back again. With it stand the version and the frames' hashes in sweep order, all that
 * registration goes by: of other frames or another version it is not taken. Numbers are written as texts, so that they come
 * back bit by bit, and those that are none, too.
 */
final class SavedPlacements {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private SavedPlacements() {}

    static String write(Surveyed sweep, Registration found) {
        ObjectNode node = head(sweep);
        node.put("model", found.model().name());
        node.put("parallaxPx", Double.toString(found.parallaxPx()));
        ArrayNode placed = node.putArray("placed");
        found.frames().forEach(frame -> write(placed.addObject(), frame));
        return MAPPER.writeValueAsString(node);
    }

    private static ObjectNode head(Surveyed sweep) {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("engine", EngineVersion.current());
        node.put("reference", sweep.reference());
        ArrayNode frames = node.putArray("frames");
        sweep.sweep().forEach(frame -> frames.add(frame.sha256()));
        return node;
    }

    private static void write(ObjectNode node, Placed frame) {
        ArrayNode placement = node.putArray("placement");
        for (double number : frame.placement().toArray()) placement.add(Double.toString(number));
        node.put("cornerErrorPx", Double.toString(frame.cornerErrorPx()));
        node.put("residualPx", Double.toString(frame.residualPx()));
        node.put("confidence", Double.toString(frame.confidence()));
        frame.doubt()
                .ifPresent(doubt -> node.putObject("doubt")
                        .put("reason", doubt.reason().name())
                        .put("sentence", doubt.sentence()));
    }

    /** Empty if the text is not of this sweep and version, or damaged: then it has to be registered. */
    static Optional<Registration> read(String text, Surveyed sweep) {
        try {
            JsonNode node = MAPPER.readTree(text);
            boolean ours = head(sweep).properties().stream()
                    .allMatch(member -> member.getValue().equals(node.get(member.getKey())));
            return ours ? Optional.of(registration(node, sweep)) : Optional.empty();
        } catch (JacksonException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static Registration registration(JsonNode node, Surveyed sweep) {
        List<Placed> placed = new ArrayList<>();
        node.required("placed").forEach(frame -> placed.add(placed(frame)));
        if (placed.size() != sweep.sweep().size()) throw new IllegalArgumentException("a placement a frame");
        return new Registration(
                sweep.reference(), Model.valueOf(text(node, "model")), number(node.required("parallaxPx")), placed);
    }

    private static Placed placed(JsonNode node) {
        double[] numbers = new double[node.required("placement").size()];
        for (int i = 0; i < numbers.length; i++)
            numbers[i] = number(node.required("placement").get(i));
        return new Placed(
                Placement.of(numbers),
                number(node.required("cornerErrorPx")),
                number(node.required("residualPx")),
                number(node.required("confidence")),
                Optional.ofNullable(node.get("doubt")).map(SavedPlacements::doubt));
    }

    private static Doubt doubt(JsonNode node) {
        return new Doubt(Doubt.Reason.valueOf(text(node, "reason")), text(node, "sentence"));
    }

    private static String text(JsonNode node, String name) {
        return node.required(name).stringValue();
    }

    private static double number(JsonNode node) {
        return Double.parseDouble(node.stringValue());
    }
}
