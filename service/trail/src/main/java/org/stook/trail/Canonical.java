package org.stook.trail;

import java.io.IOException;
import org.erdtman.jcs.JsonCanonicalizer;

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
}
