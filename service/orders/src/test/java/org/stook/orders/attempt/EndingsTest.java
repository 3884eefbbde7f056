package org.stook.orders.attempt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.junit.jupiter.api.Test;
import org.stook.orders.RunId;
import org.stook.orders.RunState;
import org.stook.orders.Studio;

class EndingsTest {
    private static final Studio STUDIO = new Studio(EndingsTest.class);
    private static final Outcome.Transient HICCUP = new Outcome.Transient("IO", "write failed");
    private final Ledger ledger = new Ledger(STUDIO.source, STUDIO.transactions, "w1");
    private final Claims claims = new Claims(ledger);
    private final Fence fence = new Fence(ledger);
    private final Endings endings = new Endings(ledger);

    @Test
    void aPermanentErrorEndsTheRun() {
        RunId run = STUDIO.run();
        assertThat(endings.end(run, claim(run), new Outcome.Failed("UNREADABLE", "f1.tif ends early")))
                .isEqualTo(new Next.Over());
        assertThat(STUDIO.state(run)).isEqualTo("FAILED");
        assertThat(STUDIO.value("select reason_code || ': ' || reason_text from stook.run where id = " + run))
                .isEqualTo("UNREADABLE: f1.tif ends early");
    }

    @Test
    void aTransientErrorIsTriedAgainAfterAPauseAndTheThirdIsFinal() {
        RunId run = STUDIO.run();
        Next.Again first = (Next.Again) endings.end(run, claim(run), HICCUP);
        assertThat(first.at()).isCloseTo(Instant.now().plusSeconds(10), within(3, ChronoUnit.SECONDS));
        assertThat(claims.claim(run, "1")).isEqualTo(new Claim.Later(first.at(), "a pause after a failure"));
        pauseIsOver(run);
        Next.Again second = (Next.Again) endings.end(run, claim(run), HICCUP);
        assertThat(second.at()).isCloseTo(Instant.now().plusSeconds(60), within(3, ChronoUnit.SECONDS));
        pauseIsOver(run);
        assertThat(endings.end(run, claim(run), HICCUP)).isEqualTo(new Next.Over());
        assertThat(STUDIO.state(run)).isEqualTo("FAILED");
    }

    @Test
    void aRetryStartsOverWithTheCountersAtZero() {
        RunId run = STUDIO.run();
        endings.end(run, claim(run), new Outcome.Failed("UNREADABLE", "f1.tif"));
        STUDIO.jdbc
                .sql("delete from jobs.scheduled_tasks where task_instance = '" + run + "'")
                .update();
        assertThat(STUDIO.runs.retry(run, "ada").state()).isEqualTo(RunState.READY);
        assertThat(STUDIO.hasTask(run)).isTrue();
        assertThat(claim(run)).isEqualTo(2);
    }

    @Test
    void aRunHandedBackCountsNothingAndKeepsItsPlace() {
        RunId run = STUDIO.run();
        STUDIO.jdbc
                .sql("update stook.run set queued_at = '2026-11-01T00:00:00Z' where id = " + run)
                .update();
        assertThat(endings.end(run, claim(run), new Outcome.HandedBack("DRAIN", "worker ends", Duration.ZERO)))
                .isEqualTo(new Next.Again(Instant.parse("2026-11-01T00:00:00Z")));
        assertThat(STUDIO.value("select state || failures || deaths from stook.run where id = " + run))
                .isEqualTo("READY00");
        Next.Again later = (Next.Again)
                endings.end(run, claim(run), new Outcome.HandedBack("FULL", "no room", Duration.ofSeconds(30)));
        assertThat(later.at()).isCloseTo(Instant.now().plusSeconds(30), within(3, ChronoUnit.SECONDS));
    }

    @Test
    void whatIsPastThePointOfNoReturnStaysThereForTheNextAttempt() {
        RunId run = STUDIO.run();
        int n = claim(run);
        fence.publishing(run, n, new StagedResult("s", "f" + run, Studio.HASH));
        assertThat(endings.end(run, n, HICCUP)).isInstanceOf(Next.Again.class);
        assertThat(STUDIO.state(run)).isEqualTo("PUBLISHING");
        pauseIsOver(run);
        int next = claim(run);
        assertThatThrownBy(() -> endings.end(run, next, new Outcome.Cancelled()))
                .hasMessageContaining("point of no return");
    }

    @Test
    void aRunTooBigForTheWorkerWaitsForAnOperator() {
        RunId run = STUDIO.run();
        assertThat(endings.end(run, claim(run), new Outcome.Held("MEMORY", "needs a slot of 6 GiB")))
                .isEqualTo(new Next.Over());
        assertThat(STUDIO.value("select state || ' ' || reason_text from stook.run where id = " + run))
                .isEqualTo("HELD needs a slot of 6 GiB");
        assertThat(STUDIO.trail(run)).endsWith("run.RUNNING-READY", "run.READY-HELD");
    }

    @Test
    void aCancelledAttemptEndsTheRun() {
        RunId run = STUDIO.run();
        assertThat(endings.end(run, claim(run), new Outcome.Cancelled())).isEqualTo(new Next.Over());
        assertThat(STUDIO.state(run)).isEqualTo("CANCELLED");
    }

    @Test
    void aStaleAttemptHasNoSay() {
        RunId run = STUDIO.run();
        int stale = claim(run);
        claim(run);
        for (Outcome outcome : new Outcome[] {
            HICCUP,
            new Outcome.Failed("X", "x"),
            new Outcome.Cancelled(),
            new Outcome.HandedBack("D", "d", Duration.ZERO),
            new Outcome.LeaseLost()
        }) {
            assertThat(endings.end(run, stale, outcome)).isEqualTo(new Next.NotOurs());
        }
        assertThat(STUDIO.value("select state || failures from stook.run where id = " + run))
                .isEqualTo("RUNNING0");
    }

    @Test
    void aWorkerThatWasSilentForTooLongGivesBackWhatNobodyTook() {
        RunId run = STUDIO.run();
        assertThat(endings.end(run, claim(run), new Outcome.LeaseLost())).isInstanceOf(Next.Again.class);
        assertThat(STUDIO.value(
                        "select state || ' ' || reason_code || failures || deaths from stook.run where id = " + run))
                .isEqualTo("READY SILENT00");
    }

    private int claim(RunId run) {
        return ((Claim.Taken) claims.claim(run, "1")).order().attempt();
    }

    private static void pauseIsOver(RunId run) {
        STUDIO.jdbc
                .sql("update stook.run set not_before = now() where id = " + run)
                .update();
    }
}
