package org.stook.orders.attempt;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.orders.NamePattern;
import org.stook.orders.RunId;
import org.stook.orders.WorkOrder;
import org.stook.orders.WorkOrder.FrameFile;
import org.stook.orders.WorkOrder.Output;
import org.stook.orders.WorkOrder.Role;
import org.stook.orders.WorkOrder.Settings;
import org.stook.orders.WorkOrder.Share;
import org.stook.orders.WorkOrder.Stack;

/** Puts a work order together from the tables. */
final class WorkOrders {
    private record Head(Stack stack, Settings settings, Output output) {}

    private final JdbcClient jdbc;

    WorkOrders(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    WorkOrder of(RunId run, int attempt) {
        Head head = jdbc.sql("""
                        select s.id, st.name, s.subject, s.view_name, s.reference_ordinal, ts.id, ts.body::text,
                          coalesce(st.publish_share_id, st.intake_share_id), st.publish_folder, st.settings->>'names'
                        from stook.run r join stook.stack s on s.id = r.stack_id join stook.station st on st.id = s.station_id
                          join stook.tone_settings ts on ts.id = r.settings_id
                        where r.id = :run""")
                .param("run", run.value())
                .query((row, n) -> new Head(
                        new Stack(
                                row.getLong(1),
                                row.getString(2),
                                row.getString(3),
                                row.getString(4),
                                row.getObject(5, Integer.class)),
                        new Settings(row.getString(6), row.getString(7)),
                        new Output(row.getLong(8), row.getString(9), NamePattern.orUsual(row.getString(10)))))
                .single();
        return new WorkOrder(
                run, attempt, head.stack(), frames(head.stack()), head.settings(), head.output(), shares(head));
    }

    private List<FrameFile> frames(Stack stack) {
        return jdbc.sql("""
                        select sf.ordinal, sf.role, sf.sha256, sf.share_id, sf.rel_path, f.width, f.height
                        from stook.stack_frame sf join stook.frame f on f.sha256 = sf.sha256
                        where sf.stack_id = :stack and sf.role in ('SWEEP', 'SLATE', 'TARGET') order by sf.ordinal""")
                .param("stack", stack.id())
                .query((row, n) -> new FrameFile(
                        row.getInt(1),
                        Role.valueOf(row.getString(2)),
                        row.getString(3),
                        row.getLong(4),
                        row.getString(5),
                        row.getInt(6),
                        row.getInt(7)))
                .list();
    }

    private List<Share> shares(Head head) {
        return jdbc.sql("""
                        select id, name, root, sentinel from stook.share
                        where id = :output or id in (select share_id from stook.stack_frame where stack_id = :stack)
                        order by id""")
                .param("output", head.output().shareId())
                .param("stack", head.stack().id())
                .query((row, n) ->
                        new Share(row.getLong(1), row.getString(2), row.getString(3), row.getObject(4, UUID.class)))
                .list();
    }
}
