package org.stook.app.intake;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.slate.SlateCode;
import org.stook.imaging.slate.SlateReading;
import org.stook.imaging.survey.BorderDetail;
import org.stook.imaging.survey.FrameSurvey;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A look as it is kept in {@code frame.survey}; number rows are little-endian 32-bit floats in Base64. */
final class LookJson {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private LookJson() {}

    static String write(Look look) {
        FrameSurvey survey = look.survey();
        FrameSurvey.Exposure exposure = survey.exposure();
        ObjectNode json = MAPPER.createObjectNode();
        json.put("tilesX", survey.tilesX()).put("tilesY", survey.tilesY());
        ArrayNode octaves = json.putArray("octaves");
        survey.octaves().forEach(octave -> octaves.add(packed(octave, octave.length)));
        json.put("floors", packed(survey.floors(), survey.floors().length));
        json.put("border", packed(look.border().energy(), look.border().energy().length));
        json.putObject("exposure")
                .put("mean", exposure.mean())
                .put("black", exposure.black())
                .put("white", exposure.white())
                .put("noise", exposure.noise());
        Plane thumbnail = survey.thumbnail();
        json.putObject("thumbnail")
                .put("width", thumbnail.width())
                .put("height", thumbnail.height())
                .put("levels", packed(thumbnail.samples(), thumbnail.width() * thumbnail.height()));
        ArrayNode codes = json.putArray("codes");
        look.reading()
                .codes()
                .forEach(code -> codes.addObject()
                        .put("symbology", code.symbology())
                        .put("text", code.text())
                        .put("x", code.x())
                        .put("y", code.y()));
        json.put("unread", look.reading().unread());
        return json.toString();
    }

    static Look read(String text) {
        JsonNode json = MAPPER.readTree(text);
        List<float[]> octaves = new ArrayList<>();
        json.path("octaves").forEach(octave -> octaves.add(floats(octave)));
        JsonNode exposure = json.path("exposure");
        JsonNode thumbnail = json.path("thumbnail");
        List<SlateCode> codes = new ArrayList<>();
        json.path("codes")
                .forEach(code -> codes.add(new SlateCode(
                        code.path("symbology").stringValue(),
                        code.path("text").stringValue(),
                        code.path("x").intValue(),
                        code.path("y").intValue())));
        FrameSurvey survey = new FrameSurvey(
                json.path("tilesX").intValue(),
                json.path("tilesY").intValue(),
                octaves,
                floats(json.path("floors")),
                new FrameSurvey.Exposure(
                        exposure.path("mean").doubleValue(),
                        exposure.path("black").doubleValue(),
                        exposure.path("white").doubleValue(),
                        exposure.path("noise").doubleValue()),
                new Plane(
                        thumbnail.path("width").intValue(),
                        thumbnail.path("height").intValue(),
                        floats(thumbnail.path("levels"))));
        // Looks of before borders were looked at have none.
        BorderDetail border =
                json.has("border") ? new BorderDetail(floats(json.path("border"))) : BorderDetail.unknown();
        return new Look(
                survey, border, new SlateReading(codes, json.path("unread").intValue()));
    }

    private static String packed(float[] values, int count) {
        ByteBuffer bytes = ByteBuffer.allocate(Float.BYTES * count).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asFloatBuffer().put(values, 0, count);
        return Base64.getEncoder().encodeToString(bytes.array());
    }

    private static float[] floats(JsonNode packed) {
        ByteBuffer bytes = ByteBuffer.wrap(Base64.getDecoder().decode(packed.stringValue()))
                .order(ByteOrder.LITTLE_ENDIAN);
        float[] values = new float[bytes.remaining() / Float.BYTES];
        bytes.asFloatBuffer().get(values);
        return values;
    }
}
