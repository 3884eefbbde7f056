package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The manifests of operators, in the caller's transaction where they are written. */
@Component
class OperatorManifests {
    private static final String CODE = "MANIFEST";

    private final JdbcClient jdbc;
    private final IntakeFiles files;

    OperatorManifests(JdbcClient jdbc, IntakeFiles files) {
        this.jdbc = jdbc;
        this.files = files;
    }

    /** What is to be written of a settled manifest. @param stacks whether its folder holds frames of many stacks */
    Runnable change(Path file, FileRow row, String folder, boolean stacks) throws IOException {
        String name = String.valueOf(file.getFileName());
        try {
            List<ManifestFile.Line> lines = ManifestFile.read(file);
            if (!stacks) {
                throw new IllegalArgumentException(
                        "found a manifest in a folder that is one stack, expected it beside the frames of several");
            }
            return () -> {
                replace(row, folder, lines);
                String said = "%s: a manifest of %d stack%s, by which files are sorted"
                        .formatted(name, lines.size(), lines.size() == 1 ? "" : "s");
                files.setAside(row, "STRAY", new Finding.Refused(CODE, said));
            };
        } catch (IllegalArgumentException e) {
            return () -> {
                replace(row, folder, List.of());
                files.setAside(row, "REJECTED", new Finding.Refused(CODE, name + ": " + e.getMessage()));
            };
        }
    }

    private void replace(FileRow row, String folder, List<ManifestFile.Line> lines) {
        jdbc.sql("delete from stook.manifest_line where file_id = :file")
                .param("file", row.id())
                .update();
        lines.forEach(line -> jdbc.sql("""
                        insert into stook.manifest_line (file_id, folder, first_name, last_name, subject, view_name)
                        values (:file, :folder, :first, :last, :subject, nullif(:view, ''))""")
                .param("file", row.id())
                .param("folder", folder)
                .param("first", line.first())
                .param("last", line.last())
                .param("subject", line.subject())
                .param("view", line.view())
                .update());
    }

    /** What holds in a folder; of two manifests the later one goes first. */
    List<ManifestFile.Line> of(Stations.Station station, String folder) {
        return jdbc.sql("""
                        select m.first_name, m.last_name, m.subject, coalesce(m.view_name, '') from stook.manifest_line m
                        join stook.intake_file f on f.id = m.file_id
                        where f.share_id = :share and m.folder = :folder and f.missing_since is null order by f.id desc, m.id""")
                .param("share", station.share().id())
                .param("folder", folder)
                .query((row, n) ->
                        new ManifestFile.Line(row.getString(1), row.getString(2), row.getString(3), row.getString(4)))
                .list();
    }
}
