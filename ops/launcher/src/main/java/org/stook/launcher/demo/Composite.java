package org.stook.launcher.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A published composite.
 *
 * @param file the composite
 * @param verdict ACCEPT, LOOK or RESHOOT
 * @param score 0 to 100
 * @param sentences what is said about the parts of the score that are not simply in order
 * @param strays the frames that the worker set aside, by file name
 */
record Composite(Path file, String verdict, String score, List<String> sentences, List<SetAside> strays) {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    /** A file that is no part of a sweep, and why. */
    record SetAside(String file, String reason) {}

    /**
     * @param score the score as JSON
     * @param record the worker's report on the composite, a JSON file beside it
     */
    static Composite of(Path file, String verdict, String score, Path record) throws IOException {
        JsonNode node = JSON.readTree(score);
        List<String> sentences = new ArrayList<>();
        for (JsonNode part : node.path("parts")) {
            if (!part.path("verdict").asString("").equals("ACCEPT")) {
                sentences.add(part.path("sentence").asString(""));
            }
        }
        return new Composite(file, verdict, node.path("total").asString("none"), sentences, strays(record));
    }

    private static List<SetAside> strays(Path record) throws IOException {
        List<SetAside> strays = new ArrayList<>();
        if (!Files.isRegularFile(record)) return strays;
        for (JsonNode frame : JSON.readTree(Files.readString(record)).path("frames")) {
            if (frame.path("role").asString("").equals("stray")) {
                strays.add(new SetAside(
                        frame.path("file").asString(""), frame.path("reason").asString("")));
            }
        }
        return strays;
    }
}
