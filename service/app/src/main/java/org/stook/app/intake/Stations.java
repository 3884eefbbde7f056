package org.stook.app.intake;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.DependsOn;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;

/** The stations as configured, each with a row of its own and of its share. */
@Component
@DependsOn("migrated")
class Stations {
    /** A station and the share its frames arrive on; its stacks' folders lie at the share's root. */
    record Station(long id, String name, Shares.Share share) {}

    private final List<Station> all;
    private final Shares.@Nullable Share publish;

    Stations(IntakeSettings settings, Shares shares, JdbcClient jdbc, TransactionOperations transaction) {
        Path root = settings.publish();
        this.publish = root == null
                ? null
                : transaction.execute(t -> shares.ensure("publish", "PUBLISH", root.toAbsolutePath()));
        Long publishId = publish == null ? null : publish.id();
        this.all = settings.stations().stream()
                .map(plan -> Objects.requireNonNull(transaction.execute(t -> {
                    Shares.Share share = shares.ensure(
                            "intake " + plan.name(), "INTAKE", plan.intake().toAbsolutePath());
                    return new Station(ensure(jdbc, plan.name(), share.id(), publishId), plan.name(), share);
                })))
                .toList();
    }

    private static long ensure(JdbcClient jdbc, String name, long share, @Nullable Long publish) {
        return jdbc.sql("""
                        insert into stook.station (name, intake_share_id, intake_folder, publish_share_id)
                        values (:name, :share, '', :publish)
                        on conflict (name) do update set publish_share_id = excluded.publish_share_id
                        returning id""")
                .param("name", name)
                .param("share", share)
                .param("publish", publish)
                .query(Long.class)
                .single();
    }

    List<Station> all() {
        return all;
    }

    Shares.@Nullable Share publish() {
        return publish;
    }
}
