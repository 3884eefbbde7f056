package org.stook.app.station;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** The members of one JSON object, read strictly. Every complaint says where, what was found and what was expected. */
final class Members {
    private final String path;
    private final JsonNode node;

    Members(String path, JsonNode node, String... known) {
        this.path = path;
        this.node = node;
        if (!node.isObject()) {
            throw complaint("", node, "an object");
        }
        List<String> names = Arrays.asList(known);
        for (String name : node.propertyNames()) {
            if (!names.isEmpty() && !names.contains(name)) {
                throw new IllegalArgumentException(
                        "%s: found no known name, expected one of %s".formatted(at(name), String.join(", ", names)));
            }
        }
    }

    Optional<JsonNode> member(String name) {
        return Optional.ofNullable(node.get(name)).filter(value -> !value.isNull());
    }

    Iterable<String> names() {
        return node.propertyNames();
    }

    Members object(String name, JsonNode otherwise, String... known) {
        return new Members(at(name), member(name).orElse(otherwise), known);
    }

    boolean flag(String name, boolean otherwise) {
        return member(name)
                .map(value -> {
                    if (!value.isBoolean()) {
                        throw complaint("." + name, value, "true or false");
                    }
                    return value.booleanValue();
                })
                .orElse(otherwise);
    }

    String text(String name, JsonNode value) {
        if (!value.isString() || value.stringValue().isBlank()) {
            throw complaint("." + name, value, "a text");
        }
        return value.stringValue();
    }

    <E extends Enum<E>> E word(String name, Class<E> words, E otherwise) {
        return member(name)
                .map(value -> {
                    for (E word : words.getEnumConstants()) {
                        if (value.isString()
                                && word.name().toLowerCase(Locale.ROOT).equals(value.stringValue())) {
                            return word;
                        }
                    }
                    String all = String.join(
                            ", ",
                            Arrays.stream(words.getEnumConstants())
                                    .map(w -> w.name().toLowerCase(Locale.ROOT))
                                    .toList());
                    throw complaint("." + name, value, "one of " + all);
                })
                .orElse(otherwise);
    }

    /** A number from {@code least} to {@code most}. */
    double number(String name, double least, double most, double otherwise) {
        return member(name)
                .map(value -> {
                    double number = value.isNumber() ? value.doubleValue() : Double.NaN;
                    if (!(number >= least && number <= most)) {
                        throw complaint("." + name, value, "a number from " + plain(least) + " to " + plain(most));
                    }
                    return number;
                })
                .orElse(otherwise);
    }

    private static String plain(double number) {
        return new BigDecimal(Double.toString(number)).stripTrailingZeros().toPlainString();
    }

    String at(String name) {
        return path.isEmpty() ? name : path + "." + name;
    }

    private IllegalArgumentException complaint(String where, JsonNode found, String expected) {
        String text = found.toString();
        String place = path.isEmpty() && where.startsWith(".") ? where.substring(1) : path + where;
        return new IllegalArgumentException("%s: found %s, expected %s"
                .formatted(
                        place.isEmpty() ? "settings" : place,
                        text.length() <= 60 ? text : text.substring(0, 57) + "...",
                        expected));
    }
}
