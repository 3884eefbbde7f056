package org.stook.imaging.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.stook.imaging.composite.Recipe;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * What a record says of how a composite was made.
 *
 * @param engineVersion that made it
 * @param frames every file that was looked at, strays too, in the order in which they were given
 * @param recipe every setting
 * @param resultSha256 of the master
 */
record RecordedWork(String engineVersion, List<Frame> frames, Recipe recipe, String resultSha256) {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String SCHEMA = "stook-report-1";

    /** @param sha256 empty where the file could not be read when the composite was made */
    record Frame(String file, String sha256) {}

    /**
     * @param record a record, or a folder such as an unpacked bag that holds exactly one
     * @throws IOException names what is wrong with it
     */
    static RecordedWork read(Path record) throws IOException {
        Path file = Files.isDirectory(record) ? only(record) : record;
        try {
            JsonNode node = JSON.readTree(Files.readString(file));
            if (!node.path("schema").asString("").equals(SCHEMA)) {
                throw new IOException(
                        file + ": found schema '" + node.path("schema").asString("") + "', expected " + SCHEMA);
            }
            return new RecordedWork(
                    node.required("engineVersion").asString(),
                    frames(node),
                    Recipe.parse(node.required("settings").toString()),
                    node.required("resultSha256").asString());
        } catch (JacksonException e) {
            throw new IOException(file + ": no record of a composition: " + e.getOriginalMessage(), e);
        }
    }

    /** As the worker gave them, where the record says so; else by name, as the command line does. */
    private static List<Frame> frames(JsonNode node) {
        List<Frame> frames = new ArrayList<>();
        for (JsonNode frame : node.path("publication").path("frames")) {
            if (frame.path("role").asString("").equals("sweep")) {
                String path = frame.required("path").asString();
                frames.add(new Frame(
                        path.substring(path.lastIndexOf('/') + 1),
                        frame.required("sha256").asString()));
            }
        }
        if (!frames.isEmpty()) return frames;
        for (JsonNode frame : node.required("frames")) {
            frames.add(new Frame(
                    frame.required("file").asString(), frame.required("sha256").asString()));
        }
        frames.sort(java.util.Comparator.comparing(Frame::file));
        return frames;
    }

    private static Path only(Path folder) throws IOException {
        List<Path> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(f -> f.toString().endsWith(".json"))
                    .sorted()
                    .toList()) {
                if (isRecord(file)) found.add(file);
            }
        }
        if (found.size() != 1) {
            throw new IOException("%s: found %d records of compositions%s, expected one; name the record itself"
                    .formatted(folder, found.size(), found.isEmpty() ? "" : " (" + found.get(0) + " ..)"));
        }
        return found.get(0);
    }

    private static boolean isRecord(Path file) throws IOException {
        try {
            return JSON.readTree(file.toFile()).path("schema").asString("").equals(SCHEMA);
        } catch (JacksonException e) {
            return false;
        }
    }
}
