package org.stook.app.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.orders.WorkOrder;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Where the files of a publication are and what they should be. */
@Component
class PublishedFiles {
    /** @param folder whether it stands for the folder that it lies in: the rest of it is small files cut from the master */
    record File(Path path, String sha256, boolean folder) {}

    /** @param there whether the share is mounted */
    record Publication(long runId, boolean there, List<File> files) {}

    private final JdbcClient jdbc;
    private final JsonMapper json;

    PublishedFiles(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    Publication of(long runId) {
        return jdbc.sql("""
                        select h.root, h.sentinel::text, p.name, p.sha256, p.files::text
                        from stook.publication p join stook.share h on h.id = p.share_id where p.run_id = :run""")
                .param("run", runId)
                .query((row, n) -> {
                    Path root = Path.of(row.getString(1)).normalize();
                    List<File> files = new ArrayList<>();
                    files.add(new File(within(root, row.getString(3)), row.getString(4), false));
                    for (JsonNode file : json.readTree(row.getString(5))) {
                        String kind = file.path("kind").asString("");
                        files.add(new File(
                                within(root, file.path("name").asString("")),
                                file.path("sha256").asString(""),
                                kind.equals("tiles") || kind.equals("review")));
                    }
                    return new Publication(runId, isThere(root, row.getString(2)), files);
                })
                .single();
    }

    private static Path within(Path root, String name) {
        Path path = root.resolve(name).normalize();
        if (!path.startsWith(root)) throw new IllegalStateException(name + " leads out of the share " + root);
        return path;
    }

    private static boolean isThere(Path root, String sentinel) {
        try {
            return Files.readString(root.resolve(WorkOrder.Share.SENTINEL))
                    .strip()
                    .equals(sentinel);
        } catch (IOException e) {
            return false;
        }
    }
}
