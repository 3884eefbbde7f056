package org.stook.app.station;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.audit.AuditTrail;
import org.stook.orders.Actor;

/** The stations and the versions of their settings. */
@Component
public class StationBook {
    /** A station for display. */
    public record Station(long id, String name, String folder, int settingsVersion) {}

    /** @param body the JSON as it was given */
    public record Version(
            int version, String body, @Nullable String note, String createdBy, Instant createdAt) {}

    private record Kept(int version, StationSettings settings) {}

    private final JdbcClient jdbc;
    private final AuditTrail audit;
    private final TransactionOperations transaction;
    private final SettingsReader reader;
    private final Map<Long, Kept> kept = new ConcurrentHashMap<>();

    public StationBook(
            JdbcClient jdbc, AuditTrail audit, TransactionOperations transaction, StationSettings.Patience usual) {
        this.jdbc = jdbc;
        this.audit = audit;
        this.transaction = transaction;
        this.reader = new SettingsReader(usual);
    }

    public List<Station> all() {
        return jdbc.sql("""
                        select t.id, t.name, s.root, t.settings_version from stook.station t
                        join stook.share s on s.id = t.intake_share_id where t.active order by t.name""")
                .query((row, n) -> new Station(row.getLong(1), row.getString(2), row.getString(3), row.getInt(4)))
                .list();
    }

    public Optional<Station> find(String name) {
        return all().stream().filter(station -> station.name().equals(name)).findFirst();
    }

    /** What holds now. */
    public StationSettings settings(long station) {
        int version = jdbc.sql("select settings_version from stook.station where id = :id")
                .param("id", station)
                .query(Integer.class)
                .single();
        return kept.compute(
                        station,
                        (id, known) ->
                                known != null && known.version() == version ? known : new Kept(version, load(id)))
                .settings();
    }

    private StationSettings load(long station) {
        return reader.read(body(station));
    }

    /** The JSON that holds now. */
    public String body(long station) {
        return jdbc.sql("select settings::text from stook.station where id = :id")
                .param("id", station)
                .query(String.class)
                .single();
    }

    /** The newest first. */
    public List<Version> history(long station) {
        return jdbc.sql("""
                        select version, body::text, note, created_by, created_at from stook.station_settings
                        where station_id = :id order by version desc""")
                .param("id", station)
                .query((row, n) -> new Version(
                        row.getInt(1),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getObject(5, OffsetDateTime.class).toInstant()))
                .list();
    }

    /**
     * Takes new settings, as a new version unless they are what holds already. They count for what is sorted and sealed from now
     * on.
     *
     * @return the version that holds now
     * @throws IllegalArgumentException naming the member, what was found and what was expected; then nothing has changed
     */
    public int change(long station, String json, String note, String actor) {
        StationSettings settings = reader.read(json);
        return Objects.requireNonNull(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            int version = jdbc.sql("select settings_version from stook.station where id = :id for update")
                    .param("id", station)
                    .query(Integer.class)
                    .single();
            boolean same = jdbc.sql("select settings = cast(:body as jsonb) from stook.station where id = :id")
                    .param("body", json)
                    .param("id", station)
                    .query(Boolean.class)
                    .single();
            return same ? version : write(station, version + 1, json, settings, note);
        }));
    }

    private int write(long station, int version, String json, StationSettings settings, String note) {
        jdbc.sql("""
                        insert into stook.station_settings (station_id, version, body, note, created_by)
                        values (:station, :version, cast(:body as jsonb), nullif(:note, ''), stook.actor())""")
                .param("station", station)
                .param("version", version)
                .param("body", json)
                .param("note", note)
                .update();
        String recipe = settings.recipe();
        jdbc.sql("""
                        insert into stook.tone_settings (id, body)
                        values (encode(sha256(convert_to(:body, 'UTF8')), 'hex'), cast(:body as jsonb)) on conflict do nothing""").param("body", recipe).update();
        jdbc.sql("""
                        update stook.station set settings = cast(:body as jsonb), settings_version = :version, changed_at = now(),
                          tone_settings_id = encode(sha256(convert_to(:recipe, 'UTF8')), 'hex') where id = :station""")
                .param("body", json)
                .param("version", version)
                .param("recipe", recipe)
                .param("station", station)
                .update();
        audit.write("station.SETTINGS-" + version, "station/" + station);
        return version;
    }
}
