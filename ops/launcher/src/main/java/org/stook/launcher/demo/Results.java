package org.stook.launcher.demo;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the database says about the pieces that were shot. */
final class Results {
    private static final String COMPOSITE = """
            select h.root, p.name, coalesce(r.verdict, 'none'), coalesce(r.score::text, '{}'),
              coalesce((select f->>'name' from jsonb_array_elements(p.files) f where f->>'kind' = 'record' limit 1), '')
            from stook.publication p
            join stook.run r on r.id = p.run_id
            join stook.stack s on s.id = p.stack_id
            join stook.share h on h.id = p.share_id
            where s.subject = ?
            order by p.published_at desc limit 1""";
    private static final String STATE = """
            select coalesce(r.state || coalesce(', ' || r.stage, '') || coalesce(': ' || r.reason_text, ''),
                            s.state || coalesce(': ' || s.reason, ''))
            from stook.stack s left join stook.run r on r.stack_id = s.id
            where s.subject = ?
            order by s.id desc, r.id desc limit 1""";
    /** Intake's word on a file stands before that of the stack it was sealed into. */
    private static final String ASIDE = """
            select distinct on (rel_path) rel_path, reason from (
              select rel_path, reason, 1 as source from stook.intake_file
              where state in ('INCOMPLETE', 'REJECTED', 'STRAY') and position(? in rel_path) > 0
              union all
              select f.rel_path, f.reason, 2
              from stook.stack_frame f join stook.stack s on s.id = f.stack_id
              where f.role = 'STRAY' and s.subject = ?) aside
            order by rel_path, source""";

    private final Connection connection;

    Results(Connection connection) {
        this.connection = connection;
    }

    /** The newest composite of a subject. */
    Optional<Composite> composite(String subject) throws SQLException, IOException {
        try (PreparedStatement ask = connection.prepareStatement(COMPOSITE)) {
            ask.setString(1, subject);
            ResultSet row = ask.executeQuery();
            if (!row.next()) return Optional.empty();
            Path root = Path.of(row.getString(1));
            Path record = root.resolve(row.getString(5));
            return Optional.of(
                    Composite.of(root.resolve(row.getString(2)), row.getString(3), row.getString(4), record));
        }
    }

    /** How far a subject has got. */
    String state(String subject) throws SQLException {
        try (PreparedStatement ask = connection.prepareStatement(STATE)) {
            ask.setString(1, subject);
            ResultSet row = ask.executeQuery();
            return row.next() ? row.getString(1) : "not seen yet";
        }
    }

    /** The files of a subject's folder that were set aside. */
    List<Composite.SetAside> setAside(String subject) throws SQLException {
        try (PreparedStatement ask = connection.prepareStatement(ASIDE)) {
            ask.setString(1, subject + "/");
            ask.setString(2, subject);
            List<Composite.SetAside> all = new ArrayList<>();
            ResultSet row = ask.executeQuery();
            while (row.next()) all.add(new Composite.SetAside(row.getString(1), row.getString(2)));
            return all;
        }
    }
}
