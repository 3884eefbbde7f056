package org.stook.trail;

import java.util.ArrayList;
import java.util.List;
import org.stook.trail.merkle.Hash;
import org.stook.trail.merkle.Proofs;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Audit entries with proof that they are in the trail that a head stands for. Travels in the bag of a publication as the file
 * {@value #FILE}.
 *
 * @param head signed where the service has a key
 * @param entries in the order of the trail
 */
public record Proof(Head head, List<Proven> entries) {
    public static final String FILE = "audit-proof.json";
    public static final String SCHEMA = "stook-proof-1";
    private static final JsonMapper JSON =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    /**
     * @param position of the leaf, from 0
     * @param canonical the entry, as it is hashed
     * @param path siblings up to the root, the leaf's own first (RFC 9162, section 2.1.3)
     */
    public record Proven(long position, String canonical, List<Hash> path) {
        public Entry entry() {
            return Entry.parse(canonical);
        }
    }

    public Proof {
        entries = List.copyOf(entries);
    }

    /** Whether the entry, as it stands here, is in the trail under the head. */
    public boolean holds(Proven proven) {
        return Proofs.included(
                Entry.leaf(proven.canonical()), proven.position(), head.size(), proven.path(), head.root());
    }

    public String toJson() {
        ObjectNode node = JSON.createObjectNode().put("schema", SCHEMA);
        node.set("head", JSON.readTree(head.toJson()));
        ArrayNode list = node.putArray("entries");
        for (Proven proven : entries) {
            ObjectNode one = list.addObject().put("position", proven.position());
            one.set("entry", JSON.readTree(proven.canonical()));
            ArrayNode path = one.putArray("path");
            proven.path().forEach(hash -> path.add(hash.hex()));
        }
        return JSON.writeValueAsString(node) + "\n";
    }

    /** @throws IllegalArgumentException with what was found, if it is no proof */
    public static Proof parse(String json) {
        try {
            JsonNode node = JSON.readTree(json);
            String schema = node.path("schema").asString("");
            if (!schema.equals(SCHEMA)) {
                throw new IllegalArgumentException("found schema '" + schema + "', expected " + SCHEMA);
            }
            List<Proven> entries = new ArrayList<>();
            for (JsonNode one : node.required("entries")) {
                List<Hash> path = new ArrayList<>();
                for (JsonNode hash : one.required("path")) path.add(Hash.ofHex(hash.asString()));
                entries.add(new Proven(
                        one.required("position").asLong(),
                        Canonical.json(one.required("entry").toString()),
                        path));
            }
            return new Proof(Head.parse(node.required("head").toString()), entries);
        } catch (JacksonException e) {
            throw new IllegalArgumentException("not a proof: " + e.getOriginalMessage(), e);
        }
    }
}
