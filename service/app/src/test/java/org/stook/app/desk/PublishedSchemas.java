package org.stook.app.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/** Schemas as their editors publish them: no licence is stated with them, so they lie beside the published pictures. */
final class PublishedSchemas {
    private PublishedSchemas() {}

    static Path find(String name) {
        Path file = Path.of(System.getProperty("stook.published-data", "published-data-not-set"), "schemas", name);
        if (!Files.isRegularFile(file)) {
            String loud = "PUBLISHED DATA ABSENT: " + file + " does not exist; this check did not run";
            System.err.println(loud);
            Assumptions.abort(loud);
        }
        return file;
    }
}
