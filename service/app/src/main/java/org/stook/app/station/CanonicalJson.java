package org.stook.app.station;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import tools.jackson.databind.JsonNode;

/**
 * JSON in one form only, so that a hash can name it (RFC 8785): members sorted by their UTF-16 units, no blanks. Numbers are
 * written in plain decimals; those below 1e-6 or from 1e21 on, which the RFC would write with an exponent, occur in no settings.
 */
public final class CanonicalJson {
    private CanonicalJson() {}

    public static String of(JsonNode node) {
        if (node.isObject()) {
            TreeMap<String, String> members = new TreeMap<>();
            node.propertyNames().forEach(name -> {
                JsonNode value = node.get(name);
                if (!value.isNull()) {
                    members.put(name, of(value));
                }
            });
            List<String> written = new ArrayList<>();
            members.forEach(
                    (name, value) -> written.add(tools.jackson.databind.node.StringNode.valueOf(name) + ":" + value));
            return "{" + String.join(",", written) + "}";
        }
        if (node.isArray()) {
            List<String> written = new ArrayList<>();
            node.forEach(value -> written.add(of(value)));
            return "[" + String.join(",", written) + "]";
        }
        return node.isNumber() ? number(node.doubleValue()) : node.toString();
    }

    private static String number(double value) {
        return value == 0
                ? "0"
                : new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }
}
