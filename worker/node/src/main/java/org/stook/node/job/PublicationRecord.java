package org.stook.node.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.stook.imaging.composite.ComposeReport;
import org.stook.node.publish.Durable;
import org.stook.node.publish.Part;
import org.stook.node.publish.Publisher;
import org.stook.orders.WorkOrder;
import org.stook.orders.WorkOrder.FrameFile;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The record of a publication: the report of its composition, and in its member {@code publication} what of which stack it
 * is, every file of it with its hash, and where every frame lay. Schema: report-1.schema.json of the imaging core.
 */
final class PublicationRecord {
    private static final JsonMapper JSON =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    private final WorkOrder order;
    private final Publisher.Finished finished;

    PublicationRecord(WorkOrder order, Publisher.Finished finished) {
        this.order = order;
        this.finished = finished;
    }

    void write(ComposeReport report) throws IOException {
        ObjectNode record = (ObjectNode) JSON.readTree(report.toJson());
        ObjectNode publication = record.putObject("publication");
        WorkOrder.Stack stack = order.stack();
        publication.put("station", stack.station());
        publication.put("subject", stack.subject());
        publication.put("view", stack.view());
        publication.put("stack", stack.id());
        publication.put("run", order.run().value());
        publication.put("settingsId", order.settings().id());
        files(publication.putArray("files"), report.resultSha256());
        ArrayNode frames = publication.putArray("frames");
        order.frames().forEach(frame -> frame(frames.addObject(), frame));
        Files.writeString(finished.file(Part.RECORD), JSON.writeValueAsString(record) + "\n");
    }

    /** All but the record itself. */
    private void files(ArrayNode files, String masterSha256) throws IOException {
        for (Part part : Part.values()) {
            if (part == Part.RECORD) continue;
            String name = order.finalName(masterSha256, part.ending());
            Path file = part.recorded(finished.file(part));
            files.addObject()
                    .put(
                            "name",
                            part.contents().map(c -> lastOf(name) + "/" + c).orElse(lastOf(name)))
                    .put("kind", part.kind())
                    .put("mediaType", part.mediaType())
                    .put("bytes", Files.size(file))
                    .put("sha256", part == Part.MASTER ? masterSha256 : Durable.sha256(file));
        }
    }

    private static String lastOf(String name) {
        return name.substring(name.lastIndexOf('/') + 1);
    }

    private void frame(ObjectNode node, FrameFile frame) {
        node.put("ordinal", frame.ordinal());
        node.put("role", frame.role().name().toLowerCase(Locale.ROOT));
        node.put("share", order.share(frame.shareId()).name());
        node.put("path", frame.path());
        node.put("sha256", frame.sha256());
    }
}
