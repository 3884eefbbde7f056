package org.stook.studioday;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** Holds database and share against what was written: nothing lost, nothing doubled, nothing made up, nothing touched. */
final class History {
    private final Map<String, String> written;
    private final WriterLog log;
    private final FaultsCommand.Mount mount;
    private final List<String> misses = new ArrayList<>();

    History(WriterLog log, FaultsCommand.Mount mount) {
        this.written = log.last();
        this.log = log;
        this.mount = mount;
    }

    List<String> misses() {
        return misses;
    }

    List<Line> check(Connection connection) throws SQLException, IOException {
        Map<String, String> rows = new HashMap<>();
        List<Line> lines = new ArrayList<>();
        lines.add(Line.none("rows of a file twice", read(connection, """
                select f.rel_path, f.state || ' ' || coalesce(f.sha256, '') || coalesce(' ' || f.reason, '')
                from stook.intake_file f""", rows)));
        lines.add(Line.none(
                "files lost: not accepted with their last content",
                bad(
                        "file",
                        written.keySet().stream()
                                .filter(path ->
                                        !rows.getOrDefault(path, "no row").equals("ACCEPTED " + written.get(path)))
                                .map(path -> path + ": " + rows.get(path)))));
        lines.add(Line.none(
                "rows of files that never were",
                bad("row", rows.keySet().stream().filter(path -> !written.containsKey(path)))));
        lines.addAll(stacks(connection));
        lines.add(Line.none("contents accepted that no writer wrote in full", strangers(connection)));
        lines.add(Line.none("files of the share changed, or not of a writer", share()));
        return lines;
    }

    private List<Line> stacks(Connection connection) throws SQLException {
        Set<String> folders = new HashSet<>();
        written.keySet().forEach(path -> folders.add(path.substring(0, path.indexOf('/'))));
        Map<String, String> sealed = new HashMap<>();
        long twice = read(connection, """
                select s.folder, string_agg(sf.rel_path || ' ' || sf.sha256, ',' order by sf.rel_path) from stook.stack s
                join stook.stack_frame sf on sf.stack_id = s.id and sf.role = 'SWEEP'
                where s.state = 'SEALED' group by s.id, s.folder""", sealed);
        Map<String, String> open = new HashMap<>();
        read(
                connection,
                "select 'stack ' || id || ' of ' || folder, state from stook.stack where state = 'COLLECTING'",
                open);
        Map<String, String> runs = new HashMap<>();
        read(connection, """
                select 'stack ' || s.id || ' of ' || s.folder, s.state || ' with ' || count(r.id) from stook.stack s
                left join stook.run r on r.stack_id = s.id and r.state in ('READY', 'HELD', 'RUNNING', 'PUBLISHING', 'PUBLISHED')
                group by s.id having count(r.id) <> case s.state when 'SEALED' then 1 else 0 end""", runs);
        return List.of(
                Line.none("stacks sealed twice", twice),
                Line.none(
                        "stacks without all their frames",
                        bad(
                                "stack",
                                folders.stream()
                                        .filter(folder -> !frames(folder).equals(sealed.get(folder)))
                                        .map(folder -> folder + " has " + sealed.get(folder)))),
                Line.none("stacks left open", bad("open", open.keySet().stream())),
                Line.none(
                        "stacks without exactly one run",
                        bad("run", runs.entrySet().stream().map(Object::toString))));
    }

    private String frames(String folder) {
        return String.join(
                ",",
                written.entrySet().stream()
                        .filter(e -> e.getKey().startsWith(folder + "/"))
                        .map(e -> e.getKey() + " " + e.getValue())
                        .sorted()
                        .toList());
    }

    /** Every content that was ever accepted was whole on the share at some time. */
    private long strangers(Connection connection) throws SQLException {
        Map<String, String> accepted = new HashMap<>();
        read(connection, """
                select sf.stack_id || ':' || sf.rel_path, sf.sha256 from stook.stack_frame sf""", accepted);
        return bad(
                "content",
                accepted.entrySet().stream()
                        .filter(e -> !log.had(e.getKey().substring(e.getKey().indexOf(':') + 1), e.getValue()))
                        .map(Object::toString));
    }

    private long share() throws IOException {
        Map<String, String> lying = new HashMap<>();
        try (Stream<Path> files = Files.walk(mount.share())) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                lying.put(mount.share().relativize(file).toString(), WriterLog.sha256(Files.readAllBytes(file)));
            }
        }
        lying.remove(".studio-share");
        Map<String, String> differing = new HashMap<>(lying);
        differing.entrySet().removeIf(e -> e.getValue().equals(written.get(e.getKey())));
        return bad("share", differing.keySet().stream()) + Math.max(0, written.size() - lying.size());
    }

    /** @return how many keys came twice */
    private static long read(Connection connection, String query, Map<String, String> into) throws SQLException {
        long twice = 0;
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(query)) {
            while (row.next()) {
                if (into.put(row.getString(1), row.getString(2)) != null) twice++;
            }
        }
        return twice;
    }

    private long bad(String what, Stream<String> all) {
        List<String> found = all.sorted().toList();
        found.forEach(one -> misses.add(what + " " + one));
        return found.size();
    }
}
