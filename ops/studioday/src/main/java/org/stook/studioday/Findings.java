package org.stook.studioday;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the service made of the day, as its database says. */
record Findings(Map<String, Found> files, List<Stack> stacks) {
    /** @param stack newest version that it is of, null for none */
    record Found(
            String state,
            String role,
            @Nullable Long stack,
            @Nullable String reason) {
        private boolean isOpen() {
            return state.equals("SEEN") || state.equals("STABLE") || state.equals("ACCEPTED") && stack == null;
        }
    }

    /**
     * @param asks why it waits for a person, null if it does not
     * @param sealedSweep frames in its sealed sweep, 0 if it is not sealed
     */
    record Stack(
            long id, String subject, String state, @Nullable String asks, int sealedSweep, int openRuns) {}

    static Findings read(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            Map<String, Found> files = new HashMap<>();
            try (ResultSet row = statement.executeQuery("""
                    select t.name || ':' || f.rel_path, f.state, f.role, f.stack_id, f.reason from stook.intake_file f
                    join stook.station t on t.id = f.station_id""")) {
                while (row.next()) {
                    files.put(
                            row.getString(1),
                            new Found(
                                    row.getString(2),
                                    row.getString(3),
                                    row.getObject(4, Long.class),
                                    row.getString(5)));
                }
            }
            return new Findings(files, stacks(statement));
        }
    }

    private static List<Stack> stacks(Statement statement) throws SQLException {
        List<Stack> stacks = new ArrayList<>();
        try (ResultSet row = statement.executeQuery("""
                select s.id, s.subject, s.state, coalesce(s.question, s.reason),
                  case when s.state = 'SEALED' then (select count(*) from stook.stack_frame f where f.stack_id = s.id and f.role = 'SWEEP')
                    else 0 end,
                  (select count(*) from stook.run r where r.stack_id = s.id and r.state in ('READY', 'RUNNING', 'HELD'))
                from stook.stack s order by s.id""")) {
            while (row.next()) {
                stacks.add(new Stack(
                        row.getLong(1),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getInt(5),
                        row.getInt(6)));
            }
        }
        return stacks;
    }

    /** Whether nothing is left to be done without a person. */
    boolean atRest() {
        return files.values().stream().noneMatch(Found::isOpen)
                && stacks.stream().noneMatch(s -> s.state().equals("COLLECTING") && s.asks() == null);
    }
}
