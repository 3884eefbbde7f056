package org.stook.app.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.springframework.util.FileSystemUtils;
import org.stook.orders.Actor;

/**
 * Removes the files of superseded publications where a station's policy says so: announced first, then, after the policy's
 * grace, done, each with its audit entry. Frames and publications that stand are never removed. A file that is not what was
 * published is left where it is.
 */
@Component
public class Retention {
    private static final Logger LOG = LoggerFactory.getLogger(Retention.class);
    private static final int AT_ONCE = 100;

    /**
     * @param supersededDays null: nothing goes
     * @param graceDays 1 or more
     */
    public record Policy(
            @Nullable Integer supersededDays,
            int graceDays,
            @Nullable String note) {
        /** @throws IllegalArgumentException if the days make no sense */
        public Policy {
            if (graceDays < 1 || (supersededDays != null && supersededDays < 0)) {
                throw new IllegalArgumentException("found %s days and a grace of %d, expected 0 or more and 1 or more"
                        .formatted(supersededDays, graceDays));
            }
        }
    }

    /** A version of a station's policy, and who set it when. */
    public record Decision(int version, Policy policy, String by, Instant at) {}

    public record Announced(long runId, long stackId, String subject, Instant dueAt) {}

    private final JdbcClient jdbc;
    private final TransactionOperations transaction;
    private final PublishedFiles files;

    Retention(JdbcClient jdbc, TransactionOperations transaction, PublishedFiles files) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.files = files;
    }

    /**
     * A new version of the station's policy.
     *
     * @return false if there is no such station
     */
    public boolean decide(String station, Policy policy, String actor) {
        return Boolean.TRUE.equals(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            return jdbc.sql("""
                            insert into stook.retention_policy (station_id, version, superseded_days, grace_days, note, created_by)
                            select s.id, 1 + coalesce((select max(version) from stook.retention_policy p where p.station_id = s.id), 0),
                              :days, :grace, :note, stook.actor() from stook.station s where s.name = :station""")
                            .param("days", policy.supersededDays(), java.sql.Types.INTEGER)
                            .param("grace", policy.graceDays())
                            .param("note", policy.note(), java.sql.Types.VARCHAR)
                            .param("station", station)
                            .update()
                    == 1;
        }));
    }

    /** All versions of a station's policy, the newest, which holds, first. */
    public List<Decision> decisions(String station) {
        return jdbc.sql("""
                        select p.version, p.superseded_days, p.grace_days, p.note, p.created_by, p.created_at
                        from stook.retention_policy p join stook.station s on s.id = p.station_id
                        where s.name = :station order by p.version desc""")
                .param("station", station)
                .query((row, n) -> new Decision(
                        row.getInt(1),
                        new Policy(row.getObject(2, Integer.class), row.getInt(3), row.getString(4)),
                        row.getString(5),
                        row.getObject(6, OffsetDateTime.class).toInstant()))
                .list();
    }

    /** Announces what may go, and removes what was announced long enough ago. */
    public void step() {
        announce();
        jdbc.sql(
                        "select run_id from stook.removal where state = 'ANNOUNCED' and due_at <= now() order by due_at limit :limit")
                .param("limit", AT_ONCE)
                .query(Long.class)
                .list()
                .forEach(this::remove);
    }

    private void announce() {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, "retention policy");
            jdbc.sql("""
                            insert into stook.removal (run_id, policy_version, due_at)
                            select p.run_id, y.version, now() + make_interval(days => y.grace_days)
                            from stook.run r join stook.publication p on p.run_id = r.id join stook.stack s on s.id = p.stack_id
                              join lateral (select * from stook.retention_policy q where q.station_id = s.station_id
                                order by version desc limit 1) y on y.superseded_days is not null
                            where r.state = 'SUPERSEDED' and r.changed_at < now() - make_interval(days => y.superseded_days)
                              and not exists (select 1 from stook.removal m where m.run_id = p.run_id)
                            order by p.run_id limit :limit""").param("limit", AT_ONCE).update();
        });
    }

    private void remove(long run) {
        PublishedFiles.Publication publication = files.of(run);
        if (!publication.there() || policyWithdrawn(run)) {
            return;
        }
        // Said before it is done: whatever happens in between, no file goes without its entry.
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, "retention policy");
            jdbc.sql("update stook.removal set state = 'REMOVED' where run_id = :run")
                    .param("run", run)
                    .update();
        });
        publication.files().forEach(file -> delete(run, file));
    }

    private boolean policyWithdrawn(long run) {
        return jdbc.sql("""
                        select not coalesce((select y.superseded_days is not null from stook.retention_policy y
                          join stook.stack s on s.station_id = y.station_id join stook.publication p on p.stack_id = s.id
                          where p.run_id = :run order by y.version desc limit 1), false)""").param("run", run).query(Boolean.class).single();
    }

    private static void delete(long run, PublishedFiles.File file) {
        if (!Fixity.hash(file.path()).equals(file.sha256())) {
            LOG.warn("{}: not what run {} published, so it is left where it is", file.path(), run);
            return;
        }
        try {
            Path folder = file.path().getParent();
            if (file.folder() && folder != null) FileSystemUtils.deleteRecursively(folder);
            else Files.delete(file.path());
        } catch (IOException e) {
            LOG.warn("{} of run {} could not be removed and stays behind: {}", file.path(), run, e.toString());
        }
    }

    /**
     * Calls an announced removal off, for good.
     *
     * @return false if none is announced
     */
    public boolean keep(long run, String actor) {
        return Boolean.TRUE.equals(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            return jdbc.sql("update stook.removal set state = 'KEPT' where run_id = :run and state = 'ANNOUNCED'")
                            .param("run", run)
                            .update()
                    == 1;
        }));
    }

    /** The soonest first. */
    public List<Announced> announced(int limit) {
        return jdbc.sql("""
                        select m.run_id, p.stack_id, s.subject, m.due_at from stook.removal m
                          join stook.publication p on p.run_id = m.run_id join stook.stack s on s.id = p.stack_id
                        where m.state = 'ANNOUNCED' order by m.due_at, m.run_id limit :limit""")
                .param("limit", limit)
                .query((row, n) -> new Announced(
                        row.getLong(1),
                        row.getLong(2),
                        row.getString(3),
                        row.getObject(4, OffsetDateTime.class).toInstant()))
                .list();
    }
}
