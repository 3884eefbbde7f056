package org.stook.imaging.composite;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.databind.JsonNode;

/** The members of one JSON object, read strictly. Every complaint says where, what was found and what was expected. */
final class JsonMembers {
    private final String path;
    private final JsonNode node;

    JsonMembers(String path, JsonNode node, String... known) {
        this.path = path;
        this.node = node;
        if (!node.isObject()) throw complaint("", describe(node), "an object");
        List<String> names = Arrays.asList(known);
        for (String name : node.propertyNames()) {
            if (!names.contains(name))
                throw complaint("." + name, "an unknown member", "one of " + String.join(", ", known));
        }
    }

    Optional<JsonNode> member(String name) {
        return Optional.ofNullable(node.get(name)).filter(value -> !value.isNull());
    }

    double number(String name, double otherwise) {
        return optionalNumber(name).orElse(otherwise);
    }

    OptionalDouble optionalNumber(String name) {
        Optional<JsonNode> value = member(name);
        if (value.isEmpty()) return OptionalDouble.empty();
        return OptionalDouble.of(number("." + name, value.get()));
    }

    Optional<String> text(String name) {
        return member(name).map(value -> {
            if (!value.isString()) throw complaint("." + name, describe(value), "a text");
            return value.stringValue();
        });
    }

    /** Three numbers. */
    Optional<double[]> triple(String name) {
        return member(name).map(value -> {
            if (!value.isArray() || value.size() != 3) throw complaint("." + name, describe(value), "three numbers");
            double[] numbers = new double[3];
            for (int i = 0; i < 3; i++) numbers[i] = number("." + name + "[" + i + "]", value.get(i));
            return numbers;
        });
    }

    /** What is done with an entry of a list. */
    interface Entry {
        void read(String path, JsonNode node);
    }

    /** Goes through a list, which may be left out. */
    void each(String name, Entry use) {
        member(name).ifPresent(value -> {
            if (!value.isArray()) throw complaint("." + name, describe(value), "a list");
            for (int i = 0; i < value.size(); i++) use.read(path(name) + "[" + i + "]", value.get(i));
        });
    }

    String path(String name) {
        return path + "." + name;
    }

    private double number(String where, JsonNode value) {
        if (!value.isNumber()) throw complaint(where, describe(value), "a number");
        return value.doubleValue();
    }

    private IllegalArgumentException complaint(String where, String found, String expected) {
        return new IllegalArgumentException("%s%s: found %s, expected %s".formatted(path, where, found, expected));
    }

    private static String describe(JsonNode value) {
        String text = value.toString();
        return text.length() <= 60 ? text : text.substring(0, 57) + "...";
    }
}
