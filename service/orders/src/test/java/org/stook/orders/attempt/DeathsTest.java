package org.stook.orders.attempt;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.stook.orders.RunId;
import org.stook.orders.Studio;

class DeathsTest {
    private static final Studio STUDIO = new Studio(DeathsTest.class);
    private final Ledger ledger = new Ledger(STUDIO.source, STUDIO.transactions, "w1");
    private final Claims claims = new Claims(ledger);
    private final Deaths here = new Deaths(ledger);
    private final Deaths there = new Deaths(new Ledger(STUDIO.source, STUDIO.transactions, "w2"));

    @Test
    void aDeathNoticedByTwoNodesIsCountedOnce() {
        RunId run = STUDIO.run();
        claims.claim(run, "1");
        assertThat(here.noticed(run, 1)).isInstanceOf(Next.Again.class);
        assertThat(there.noticed(run, 1)).isInstanceOf(Next.Again.class);
        assertThat(STUDIO.value("select state || deaths from stook.run where id = " + run))
                .isEqualTo("READY1");
        assertThat(STUDIO.value("select outcome from stook.attempt where run_id = " + run))
                .isEqualTo("DIED");
    }

    @Test
    void aLateNoticeDoesNotKillTheNextAttempt() {
        RunId run = STUDIO.run();
        claims.claim(run, "1");
        here.noticed(run, 1);
        taskMovesOn(run);
        claims.claim(run, "1");
        assertThat(there.noticed(run, 1)).isEqualTo(new Next.NotOurs());
        assertThat(STUDIO.value("select state || deaths from stook.run where id = " + run))
                .isEqualTo("RUNNING1");
    }

    @Test
    void theThirdDeathPutsTheRunInQuarantineWhereNobodyClaimsIt() {
        RunId run = STUDIO.run();
        for (int version = 1; version < Deaths.LIMIT; version++) {
            claims.claim(run, "1");
            assertThat(here.noticed(run, version)).isInstanceOf(Next.Again.class);
            taskMovesOn(run);
        }
        claims.claim(run, "1");
        assertThat(here.noticed(run, Deaths.LIMIT)).isEqualTo(new Next.Over());
        assertThat(STUDIO.state(run)).isEqualTo("QUARANTINED");
        assertThat(claims.claim(run, "1")).isInstanceOf(Claim.Nothing.class);
        assertThat(STUDIO.runs.retry(run, "ada").done()).isTrue();
        assertThat(STUDIO.value("select state || deaths from stook.run where id = " + run))
                .isEqualTo("READY0");
    }

    @Test
    void anAttemptThatSawTheDatabaseRestartIsNotBlamed() {
        RunId run = STUDIO.run();
        claims.claim(run, "1");
        STUDIO.jdbc
                .sql("update stook.attempt set started_at = pg_postmaster_start_time() - interval '1 s' where run_id = "
                        + run)
                .update();
        assertThat(here.noticed(run, 1)).isInstanceOf(Next.Again.class);
        assertThat(STUDIO.value("select state || deaths from stook.run where id = " + run))
                .isEqualTo("READY0");
    }

    @Test
    void aDeathPastThePointOfNoReturnLeavesTheResultToTheNextAttempt() {
        RunId run = STUDIO.run();
        claims.claim(run, "1");
        new Fence(ledger).publishing(run, 1, new StagedResult("s", "f" + run, Studio.HASH));
        assertThat(here.noticed(run, 1)).isInstanceOf(Next.Again.class);
        assertThat(((Claim.Taken) claims.claim(run, "1")).staged()).isNotNull();
    }

    @Test
    void aDeadAttemptThatWasToBeCancelledIsCancelled() {
        RunId run = STUDIO.run();
        claims.claim(run, "1");
        STUDIO.runs.cancel(run, "ada", "reshot");
        assertThat(here.noticed(run, 1)).isEqualTo(new Next.Over());
        assertThat(STUDIO.state(run)).isEqualTo("CANCELLED");
    }

    @Test
    void aRunThatEndedMeanwhileStaysAsItIs() {
        RunId run = STUDIO.run();
        claims.claim(run, "1");
        new Endings(ledger).end(run, 1, new Outcome.HandedBack("DRAIN", "worker ends", Duration.ZERO));
        assertThat(here.noticed(run, 1)).isInstanceOf(Next.Again.class);
        assertThat(STUDIO.value("select state || deaths from stook.run where id = " + run))
                .isEqualTo("READY0");
    }

    @Test
    void aWorkerThatWasTakenForDeadAndComesBackTakesItsDeathBackOnce() {
        RunId run = STUDIO.run();
        claims.claim(run, "1");
        here.noticed(run, 1);
        taskMovesOn(run);
        claims.claim(run, "1");
        Endings endings = new Endings(ledger);
        assertThat(endings.end(run, 1, new Outcome.LeaseLost())).isEqualTo(new Next.NotOurs());
        endings.end(run, 1, new Outcome.LeaseLost());
        assertThat(STUDIO.value("select state || deaths || attempt from stook.run where id = " + run))
                .isEqualTo("RUNNING02");
        assertThat(STUDIO.value("select outcome from stook.attempt where n = 1 and run_id = " + run))
                .isEqualTo("LOST");
    }

    /** What the queue does when a task is given to the next worker. */
    private static void taskMovesOn(RunId run) {
        STUDIO.jdbc
                .sql("update jobs.scheduled_tasks set version = version + 1 where task_instance = '" + run + "'")
                .update();
    }
}
