package org.stook.app.intake;

import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.sorting.Group;
import org.stook.app.stack.Sealed;
import org.stook.app.stack.Sealing;
import org.stook.orders.Actor;

/** What is done with a stack whose shots are together: strays aside, the sweep judged, sealed unless a person is asked. */
@Component
class Completion {
    private static final Logger LOG = LoggerFactory.getLogger(Completion.class);
    private static final String ACTOR = "intake";

    private final JdbcClient jdbc;
    private final TransactionOperations transaction;
    private final Sweeps sweeps;
    private final Sealing sealing;

    Completion(JdbcClient jdbc, TransactionOperations transaction, Sweeps sweeps, Sealing sealing) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.sweeps = sweeps;
        this.sealing = sealing;
    }

    /** @param group what sorting says of it, null if it was not sorted */
    void complete(long stack, @Nullable Group group) {
        if (!due(stack)) {
            return;
        }
        if (group != null) {
            setAside(group);
        }
        sweeps.judge(stack);
        raws(stack);
        Sealed outcome = sealing.seal(stack, ACTOR);
        LOG.info("stack {}: {}", stack, outcome);
    }

    /** Not while a file of it, or one that was seen before its last frame, is still arriving, nor again before something changes. */
    private boolean due(long stack) {
        return jdbc.sql("""
                        select s.state = 'COLLECTING' and s.reason is null and (s.question is null or s.word is null)
                          and not exists (select 1 from stook.intake_file a where a.station_id = s.station_id
                            and a.state in ('SEEN', 'STABLE') and a.missing_since is null
                            and (a.stack_id = s.id or a.id < (select max(f.id) from stook.intake_file f where f.stack_id = s.id)))
                        from stook.stack s where s.id = :stack""").param("stack", stack).query(Boolean.class).single();
    }

    /** Its strays, as sorting found them. */
    void setAside(Group group) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, ACTOR);
            group.strays()
                    .forEach(stray -> jdbc.sql("""
                            update stook.intake_file set state = 'STRAY', reason_code = :code, reason = :reason
                            where id = :id and state = 'ACCEPTED'""")
                            .param("code", stray.shot().sight().blank().isEmpty() ? "OTHER_SUBJECT" : "BLANK")
                            .param("reason", stray.reason())
                            .param("id", stray.shot().file())
                            .update());
        });
    }

    /** Raw files follow the pictures of the same capture. */
    private void raws(long stack) {
        jdbc.sql("""
                        update stook.intake_file r set stack_id = :stack from stook.intake_file p
                        where r.role = 'RAW' and r.stack_id is distinct from :stack and p.stack_id = :stack and p.share_id = r.share_id
                          and regexp_replace(lower(p.rel_path), '\\.[^./]*$', '') = regexp_replace(lower(r.rel_path), '\\.[^./]*$', '')
                          and p.role <> 'RAW'""").param("stack", stack).update();
    }
}
