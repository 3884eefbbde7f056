package org.stook.trail;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Base64;
import org.jspecify.annotations.Nullable;
import org.stook.trail.merkle.Hash;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * What stands for the whole trail up to a moment: whoever holds a head can tell later whether any of its entries was changed.
 *
 * @param size number of entries under it
 * @param root hash of the tree over them
 * @param previous root of the head before it
 * @param at when it was made, by the database's clock
 * @param signature null where the service has no key
 */
public record Head(
        long size,
        Hash root,
        Hash previous,
        Instant at,
        @Nullable Signature signature) {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    /** @param key fingerprint of the key, see {@link PublicHeadKey#fingerprint()} */
    public record Signature(String key, String base64) {}

    /** The bytes that are signed: the head without its signature, RFC 8785 JSON. */
    public byte[] signedBytes() {
        return Canonical.json(node().toString()).getBytes(UTF_8);
    }

    /** One line of JSON, canonical. */
    public String toJson() {
        ObjectNode node = node();
        if (signature != null) {
            node.put("key", signature.key()).put("signature", signature.base64());
        }
        return Canonical.json(node.toString());
    }

    private ObjectNode node() {
        return JSON.createObjectNode()
                .put("size", size)
                .put("root", root.hex())
                .put("previous", previous.hex())
                .put("at", at.toString());
    }

    public Head signed(HeadKey key) {
        byte[] bytes = key.sign(signedBytes());
        return new Head(
                size,
                root,
                previous,
                at,
                new Signature(key.publicKey().fingerprint(), Base64.getEncoder().encodeToString(bytes)));
    }

    /** Whether the key's owner made it. False for a head without a signature. */
    public boolean signedBy(PublicHeadKey key) {
        return signature != null && key.verifies(signedBytes(), signature.base64());
    }

    /** @throws IllegalArgumentException with what was found, if it is no head */
    public static Head parse(String json) {
        try {
            JsonNode node = JSON.readTree(json);
            return new Head(
                    node.required("size").asLong(),
                    Hash.ofHex(node.required("root").asString()),
                    Hash.ofHex(node.required("previous").asString()),
                    Instant.parse(node.required("at").asString()),
                    node.has("signature")
                            ? new Signature(
                                    node.required("key").asString(),
                                    node.required("signature").asString())
                            : null);
        } catch (JacksonException | DateTimeException | IllegalArgumentException e) {
            throw new IllegalArgumentException("no head of an audit trail: " + json, e);
        }
    }
}
