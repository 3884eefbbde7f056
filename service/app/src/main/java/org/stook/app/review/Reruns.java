package org.stook.app.review;

import java.util.Objects;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.audit.AuditTrail;
import org.stook.app.station.CanonicalJson;
import org.stook.imaging.composite.Recipe;
import org.stook.orders.Actor;
import org.stook.orders.NewRun;
import org.stook.orders.Priorities;
import org.stook.orders.Runs;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Orders another run of a stack with other settings. The settings are stored under the hash of their canonical JSON (RFC 8785). */
@Component
public class Reruns {
    private static final int LONGEST_NOTE = 500;

    private final JdbcClient jdbc;
    private final AuditTrail audit;
    private final Runs runs;
    private final TransactionOperations transaction;
    private final JsonMapper json = JsonMapper.builder().build();

    Reruns(JdbcClient jdbc, AuditTrail audit, Runs runs, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.audit = audit;
        this.runs = runs;
        this.transaction = transaction;
    }

    /** The settings of a run as they were ordered, what was left out left out. */
    public Optional<JsonNode> settings(long run) {
        return jdbc.sql("select t.body::text from stook.run r join stook.tone_settings t on t.id = r.settings_id"
                        + " where r.id = :run")
                .param("run", run)
                .query(String.class)
                .optional()
                .map(json::readTree);
    }

    /** The settings that the next run of a stack would have by itself. */
    public JsonNode usual(long stack) {
        return jdbc.sql("""
                        select t.body::text from stook.run r join stook.tone_settings t on t.id = r.settings_id
                        where r.stack_id = :stack order by r.id desc limit 1""")
                .param("stack", stack)
                .query(String.class)
                .optional()
                .map(json::readTree)
                .orElseGet(json::createObjectNode);
    }

    /**
     * Orders the run; an open one with the very same settings is given instead of a second.
     *
     * @param settings judged by the workers' own reader
     * @param note why, for the trail
     * @return its id
     * @throws IllegalArgumentException naming the member of the settings, what was found and what was expected
     * @throws IllegalStateException if the stack is not sealed
     */
    public long order(long stack, JsonNode settings, String note, String actor) {
        Recipe recipe = Recipe.parse(settings.toString());
        if (note.length() > LONGEST_NOTE) {
            throw new IllegalArgumentException(
                    "the note: found %d characters, expected %d at most".formatted(note.length(), LONGEST_NOTE));
        }
        String body = CanonicalJson.of(settings);
        return Objects.requireNonNull(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            String id = keep(body);
            int priority = onTable(stack) ? Priorities.ON_TABLE : Priorities.NORMAL;
            long run = runs.create(new NewRun(stack, id, priority, actor)).value();
            audit.write("run.SETTINGS", "run/" + run, details(id, recipe, settings, note));
            return run;
        }));
    }

    private String keep(String body) {
        String id = jdbc.sql("select encode(sha256(convert_to(:body, 'UTF8')), 'hex')")
                .param("body", body)
                .query(String.class)
                .single();
        jdbc.sql("insert into stook.tone_settings (id, body) values (:id, cast(:body as jsonb)) on conflict do nothing")
                .param("id", id)
                .param("body", body)
                .update();
        return id;
    }

    private boolean onTable(long stack) {
        return jdbc.sql("select on_table from stook.stack where id = :stack")
                .param("stack", stack)
                .query(Boolean.class)
                .optional()
                .orElse(false);
    }

    /** What was taken by hand from which frame is disclosed in full. */
    private String details(String id, Recipe recipe, JsonNode settings, String note) {
        ObjectNode details = json.createObjectNode().put("settings", id);
        if (!note.isBlank()) details.put("reason", note.strip());
        if (!recipe.overrides().isEmpty()) details.set("overrides", settings.path("overrides"));
        return details.toString();
    }
}
