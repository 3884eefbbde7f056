package org.stook.trail;

import java.io.IOException;
import org.erdtman.jcs.JsonCanonicalizer;
import tools.jackson.databind.node.StringNode;

/** JSON in its one canonical form (RFC 8785), which is what is hashed and signed. */
public final class Canonical {
    private Canonical() {}

    /** @throws IllegalArgumentException if it is no JSON object or array */
    public static String json(String json) {
        try {
            return new JsonCanonicalizer(json).getEncodedString();
        } catch (IOException e) {
            throw new IllegalArgumentException("not JSON that has a canonical form: " + e.getMessage(), e);
        }
    }

    /** One text as a JSON string. */
    static String string(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c == '"' || c == '\\') {
                return escaped(text);
            }
        }
        return '"' + text + '"';
    }

    private static String escaped(String text) {
        String array = json("[" + StringNode.valueOf(text) + "]");
        return array.substring(1, array.length() - 1);
    }
}
