package org.stook.trail;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Instant;
import org.stook.trail.merkle.Hash;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * One audit entry with every column, so that none can be changed unseen.
 *
 * @param id number the database gave it; numbers may be missing where a transaction was rolled back
 * @param xid the transaction that wrote it
 * @param at when, to the microsecond
 * @param actor who
 * @param kind such as {@code run.READY-RUNNING}
 * @param subject such as {@code run/17}
 * @param body details, a JSON object
 */
public record Entry(long id, String xid, Instant at, String actor, String kind, String subject, String body) {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    /** The text whose hash is the leaf: RFC 8785 JSON of all columns. */
    public String canonical() {
        return "{\"actor\":" + Canonical.string(actor) + ",\"at\":\"" + at + "\",\"body\":" + Canonical.json(body)
                + ",\"id\":" + id + ",\"kind\":" + Canonical.string(kind) + ",\"subject\":" + Canonical.string(subject)
                + ",\"xid\":" + Canonical.string(xid) + "}";
    }

    public Hash leaf() {
        return leaf(canonical());
    }

    /** Of an entry that is already in its canonical form. */
    public static Hash leaf(String canonical) {
        return Hash.leaf(canonical.getBytes(UTF_8));
    }

    /** @throws IllegalArgumentException with what was found, if it is no entry */
    public static Entry parse(String json) {
        try {
            JsonNode node = JSON.readTree(json);
            return new Entry(
                    node.required("id").asLong(),
                    node.required("xid").asString(),
                    Instant.parse(node.required("at").asString()),
                    node.required("actor").asString(),
                    node.required("kind").asString(),
                    node.required("subject").asString(),
                    node.required("body").toString());
        } catch (JacksonException | java.time.DateTimeException e) {
            throw new IllegalArgumentException("no audit entry: " + abridged(json), e);
        }
    }

    private static String abridged(String text) {
        return text.length() <= 80 ? text : text.substring(0, 80) + "...";
    }
}
