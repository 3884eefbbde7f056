package org.stook.app.archive;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriUtils;
import org.stook.app.publish.Publications;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A subject's composites as a manifest of the IIIF Presentation API 3.0 (https://iiif.io/api/presentation/3.0/): a canvas for each
 * view, on it the composite as a JPEG, and its tiles as an image service where there are any.
 */
@Component
public class Manifests {
    private static final Logger LOG = LoggerFactory.getLogger(Manifests.class);

    private final Archive archive;
    private final Publications publications;
    private final JsonMapper json;

    Manifests(Archive archive, Publications publications, JsonMapper json) {
        this.archive = archive;
        this.publications = publications;
        this.json = json;
    }

    /** Width and height, pixels. */
    private record Size(int width, int height) {}

    /**
     * @param address of this service, with scheme and port
     * @return empty if the subject has no composite whose record can be read
     */
    public Optional<ObjectNode> of(String subject, String address) {
        ObjectNode manifest = json.createObjectNode();
        manifest.put("@context", "http://iiif.io/api/presentation/3/context.json");
        manifest.put(
                "id", address + "/iiif/subjects/" + UriUtils.encodePathSegment(subject, "UTF-8") + "/manifest.json");
        manifest.put("type", "Manifest");
        words(manifest.putObject("label"), "none", subject);
        words(
                manifest.putObject("summary"),
                "en",
                "Composites of focus brackets. A composite shows no single instant; each says in its record of which frames it"
                        + " was made.");
        ArrayNode canvases = manifest.putArray("items");
        List<Holding> holdings = archive.ofSubject(subject);
        for (Holding holding : holdings) {
            size(holding.runId()).ifPresent(size -> canvas(canvases.addObject(), holding, size, address));
        }
        return canvases.isEmpty() ? Optional.empty() : Optional.of(manifest);
    }

    private void canvas(ObjectNode canvas, Holding holding, Size size, String address) {
        String files = address + "/api/archive/publications/" + holding.runId();
        String id = address + "/iiif/canvases/" + holding.runId();
        canvas.put("id", id).put("type", "Canvas");
        words(canvas.putObject("label"), "none", holding.view() == null ? holding.subject() : holding.view());
        canvas.put("height", size.height()).put("width", size.width());
        ArrayNode facts = canvas.putArray("metadata");
        fact(facts, "Station", holding.station());
        fact(facts, "Published", holding.publishedAt().toString());
        if (holding.score() != null) fact(facts, "Score", holding.score() + " of 100");
        fact(facts, "SHA-256 of the master", holding.sha256());
        canvas.putArray("thumbnail")
                .addObject()
                .put("id", files + "/files/thumbnail")
                .put("type", "Image")
                .put("format", "image/jpeg");
        link(canvas.putArray("seeAlso").addObject(), files + "/files/record", "application/json", "Record");
        link(canvas.putArray("rendering").addObject(), files + "/bag.tar", "application/x-tar", "Bag (RFC 8493)");
        ObjectNode page = canvas.putArray("items").addObject();
        page.put("id", id + "/page").put("type", "AnnotationPage");
        ObjectNode painting = page.putArray("items").addObject();
        painting.put("id", id + "/painting").put("type", "Annotation").put("motivation", "painting");
        picture(painting.putObject("body"), holding.runId(), size, address);
        painting.put("target", id);
    }

    private void picture(ObjectNode body, long run, Size size, String address) {
        body.put("id", address + "/api/archive/publications/" + run + "/files/derivative");
        body.put("type", "Image").put("format", "image/jpeg");
        body.put("height", size.height()).put("width", size.width());
        if (publications.file(run, "tiles").isPresent()) {
            body.putArray("service")
                    .addObject()
                    .put("id", address + "/iiif/images/" + run)
                    .put("type", "ImageService3")
                    .put("profile", "level0");
        }
    }

    private Optional<Size> size(long run) {
        return publications.file(run, "record").flatMap(this::size);
    }

    private Optional<Size> size(Path record) {
        try {
            JsonNode area = json.readTree(record.toFile()).path("commonArea");
            int width = area.path("width").asInt(0);
            int height = area.path("height").asInt(0);
            return width > 0 && height > 0 ? Optional.of(new Size(width, height)) : Optional.empty();
        } catch (JacksonException e) {
            LOG.warn(
                    "the record {} cannot be read; its composite is left out of the manifest: {}",
                    record,
                    e.getMessage());
            return Optional.empty();
        }
    }

    private static void words(ObjectNode node, String language, String text) {
        node.putArray(language).add(text);
    }

    private static void fact(ArrayNode facts, String label, String value) {
        ObjectNode fact = facts.addObject();
        words(fact.putObject("label"), "en", label);
        words(fact.putObject("value"), "none", value);
    }

    private static void link(ObjectNode node, String id, String format, String label) {
        node.put("id", id).put("type", "Dataset").put("format", format);
        words(node.putObject("label"), "en", label);
    }
}
