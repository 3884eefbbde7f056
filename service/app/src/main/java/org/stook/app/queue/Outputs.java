package org.stook.app.queue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.orders.WorkOrder;

/** The shares that composites go to, as this service mounts them. */
final class Outputs {
    /**
     * @param folders below the root that stations publish to
     */
    record Output(long shareId, String name, Path root, UUID sentinel, List<String> folders) {

        /** Whether it is this share that is mounted at its root, and not an empty mount point. */
        boolean isThere() {
            try {
                return Files.readString(root.resolve(WorkOrder.Share.SENTINEL))
                        .strip()
                        .equalsIgnoreCase(sentinel.toString());
            } catch (IOException e) {
                return false;
            }
        }
    }

    private Outputs() {}

    static List<Output> of(JdbcClient jdbc) {
        return jdbc.sql("""
                        select sh.id, sh.name, sh.root, sh.sentinel, array_agg(distinct st.publish_folder order by st.publish_folder)
                        from stook.station st join stook.share sh on sh.id = coalesce(st.publish_share_id, st.intake_share_id)
                        group by sh.id order by sh.id""")
                .query((row, n) -> new Output(
                        row.getLong(1),
                        row.getString(2),
                        Path.of(row.getString(3)),
                        row.getObject(4, UUID.class),
                        List.of((String[]) row.getArray(5).getArray())))
                .list();
    }
}
