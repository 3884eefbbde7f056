package org.stook.orders.attempt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.stook.orders.attempt.Standing.CANCEL;
import static org.stook.orders.attempt.Standing.LEASE_LOST;
import static org.stook.orders.attempt.Standing.VALID;

import org.junit.jupiter.api.Test;
import org.stook.orders.Change;
import org.stook.orders.NewRun;
import org.stook.orders.RunId;
import org.stook.orders.RunState;
import org.stook.orders.Studio;
import org.stook.orders.Upkeep;
import org.stook.orders.WorkOrder;

class FenceTest {
    private static final Studio STUDIO = new Studio(FenceTest.class);
    private static final PublishedResult DONE = new PublishedResult(9, "[]", "{\"sharpness\": 1}", "ACCEPT");

    /** A worker's claims and fence, held by hand. */
    private record Hand(Claims claims, Fence fence) {
        static Hand of(String worker) {
            Ledger ledger = new Ledger(STUDIO.source, STUDIO.transactions, worker);
            return new Hand(new Claims(ledger), new Fence(ledger));
        }

        Claim claim(RunId run) {
            return claims.claim(run, "1");
        }
    }

    private final Hand h1 = Hand.of("w1");
    private final Hand h2 = Hand.of("w2");
    private final Fence w1 = h1.fence();
    private final Fence w2 = h2.fence();

    @Test
    void aClaimGivesAllThatTheWorkNeeds() {
        RunId run = STUDIO.run();
        WorkOrder order = claim(h1, run);
        assertThat(order.attempt()).isEqualTo(1);
        assertThat(order.sweep()).extracting(WorkOrder.FrameFile::path).containsExactly("north/f0.tif", "north/f1.tif");
        assertThat(order.sweep().get(0).width()).isEqualTo(3);
        assertThat(order.settings().json()).isEqualTo("{\"exposure\": 0.5}");
        assertThat(order.share(order.output().shareId()).root()).isEqualTo("/out");
        assertThat(order.share(order.frames().get(0).shareId()).root()).isEqualTo("/in");
        assertThat(order.stagedName()).isEqualTo("done/.staging/" + run + ".1.part");
        assertThat(order.finalName(Studio.HASH, ".tif"))
                .isEqualTo("done/Fluorite-blue-7/" + run + "-abababababababab.tif");
        assertThat(STUDIO.trail(run)).containsExactly("run.CREATED", "run.READY-RUNNING");
    }

    @Test
    void aRunIsPublishedOnceAndOnlyOnce() {
        RunId run = STUDIO.run();
        publish(h1, run);
        assertThat(STUDIO.state(run)).isEqualTo("PUBLISHED");
        assertThat(h1.claim(run)).isEqualTo(new Claim.Nothing(RunState.PUBLISHED));
        assertThat(w2.published(run, 2, DONE)).isEqualTo(LEASE_LOST);
        assertThat(STUDIO.value("select count(*) from stook.publication where run_id = " + run))
                .isEqualTo("1");
        assertThat(STUDIO.trail(run))
                .containsExactly(
                        "run.CREATED", "run.READY-RUNNING", "run.RUNNING-PUBLISHING", "run.PUBLISHING-PUBLISHED");
    }

    @Test
    void placementsOutliveTheirAttemptAndAreGoneWhenTheRunIsOver() {
        RunId run = STUDIO.run();
        claim(h1, run);
        w1.placements().save(run, 1, "where they lie");
        claim(h2, run);
        w1.placements().save(run, 1, "late");
        assertThat(w2.placements().saved(run)).contains("where they lie");
        w2.placements().taken(run, 2);
        assertThat(STUDIO.value("select placements_of from stook.attempt where n = 2 and run_id = " + run))
                .isEqualTo("1");
        Upkeep upkeep = new Upkeep(STUDIO.source, STUDIO.transactions);
        assertThat(upkeep.forgetPlacements()).isZero();
        w2.publishing(run, 2, staged(run, 2, Studio.HASH));
        w2.published(run, 2, DONE);
        assertThat(upkeep.forgetPlacements()).isEqualTo(1);
        assertThat(w2.placements().saved(run)).isEmpty();
    }

    @Test
    void sayingItTwiceIsHarmlessForTheSameAttempt() {
        RunId run = STUDIO.run();
        int n = claim(h1, run).attempt();
        StagedResult staged = staged(run, n, Studio.HASH);
        assertThat(w1.publishing(run, n, staged)).isEqualTo(VALID);
        assertThat(w1.publishing(run, n, staged)).isEqualTo(VALID);
        assertThat(w1.publishing(run, n, staged(run, n, "cd".repeat(32)))).isEqualTo(LEASE_LOST);
        assertThat(w1.published(run, n, DONE)).isEqualTo(VALID);
        assertThat(w1.published(run, n, DONE)).isEqualTo(VALID);
        assertThat(STUDIO.trail(run)).hasSize(4);
    }

    @Test
    void anAttemptThatWasTakenOverCanWriteNothing() {
        RunId run = STUDIO.run();
        int stale = claim(h1, run).attempt();
        int fresh = claim(h2, run).attempt();
        assertThat(fresh).isEqualTo(stale + 1);
        assertThat(w1.progress(run, stale, "blend", 0.5)).isEqualTo(LEASE_LOST);
        assertThat(w1.publishing(run, stale, staged(run, stale, Studio.HASH))).isEqualTo(LEASE_LOST);
        assertThat(w2.publishing(run, fresh, staged(run, fresh, Studio.HASH))).isEqualTo(VALID);
        assertThat(w1.published(run, stale, DONE)).isEqualTo(LEASE_LOST);
        assertThat(w1.stagedResultLost(run, stale)).isEqualTo(LEASE_LOST);
        assertThat(w2.published(run, fresh, DONE)).isEqualTo(VALID);
        assertThat(STUDIO.value("select outcome from stook.attempt where run_id = " + run + " and n = " + stale))
                .isEqualTo("LOST");
    }

    @Test
    void publishingIsTakenOverWithWhatWasStaged() {
        RunId run = STUDIO.run();
        int first = claim(h1, run).attempt();
        StagedResult staged = staged(run, first, Studio.HASH);
        w1.publishing(run, first, staged);
        Claim.Taken second = (Claim.Taken) h2.claim(run);
        assertThat(second.staged()).isEqualTo(staged);
        assertThat(STUDIO.state(run)).isEqualTo("PUBLISHING");
        assertThat(w1.published(run, first, DONE)).isEqualTo(LEASE_LOST);
        assertThat(w2.published(run, second.order().attempt(), DONE)).isEqualTo(VALID);
        assertThat(STUDIO.value("select attempt || ' ' || name from stook.publication where run_id = " + run))
                .isEqualTo("2 " + staged.finalName());
    }

    @Test
    void aLostStagedResultIsComputedAgain() {
        RunId run = STUDIO.run();
        int first = claim(h1, run).attempt();
        w1.publishing(run, first, staged(run, first, Studio.HASH));
        int second = claim(h2, run).attempt();
        assertThat(w2.stagedResultLost(run, second)).isEqualTo(VALID);
        assertThat(STUDIO.state(run)).isEqualTo("RUNNING");
        assertThat(w2.publishing(run, second, staged(run, second, "cd".repeat(32))))
                .isEqualTo(VALID);
    }

    @Test
    void aRunningAttemptHearsOfItsCancellation() {
        RunId run = STUDIO.run();
        int n = claim(h1, run).attempt();
        assertThat(w1.progress(run, n, "survey", 0.1)).isEqualTo(VALID);
        assertThat(STUDIO.runs.cancel(run, "ada", "reshot")).isEqualTo(new Change(true, RunState.RUNNING));
        assertThat(w1.progress(run, n, "survey", 0.2)).isEqualTo(CANCEL);
        assertThat(w1.publishing(run, n, staged(run, n, Studio.HASH))).isEqualTo(CANCEL);
        assertThat(h2.claim(run)).isEqualTo(new Claim.Nothing(RunState.CANCELLED));
    }

    @Test
    void afterThePointOfNoReturnACancellationIsRefused() {
        RunId run = STUDIO.run();
        int n = claim(h1, run).attempt();
        w1.publishing(run, n, staged(run, n, Studio.HASH));
        assertThat(STUDIO.runs.cancel(run, "ada", "late")).isEqualTo(new Change(false, RunState.PUBLISHING));
        assertThat(w1.progress(run, n, "publish", 1)).isEqualTo(VALID);
    }

    @Test
    void aLaterPublicationSupersedesTheEarlier() {
        long stack = STUDIO.stack();
        RunId first = STUDIO.runs.create(new NewRun(stack, Studio.HASH, 50, "ada"));
        publish(h1, first);
        RunId second = STUDIO.runs.create(new NewRun(stack, Studio.HASH, 50, "ada"));
        publish(h1, second);
        assertThat(STUDIO.state(first)).isEqualTo("SUPERSEDED");
        assertThat(STUDIO.value("select supersedes from stook.publication where run_id = " + second))
                .isEqualTo(first.toString());
    }

    @Test
    void nothingIsClaimedWhileAShareItNeedsIsGone() {
        RunId run = STUDIO.run();
        STUDIO.jdbc
                .sql("update stook.share set state = 'GONE' where name = 'card'")
                .update();
        Claim claim = h1.claim(run);
        STUDIO.jdbc.sql("update stook.share set state = 'OK'").update();
        assertThat(claim).isInstanceOf(Claim.Later.class).asString().contains("share card is GONE");
        assertThat(STUDIO.state(run)).isEqualTo("READY");
        assertThat(claim(h1, run).attempt()).isEqualTo(1);
    }

    private static WorkOrder claim(Hand hand, RunId run) {
        return ((Claim.Taken) hand.claim(run)).order();
    }

    private static StagedResult staged(RunId run, int attempt, String hash) {
        return new StagedResult(
                "done/.staging/" + run + "." + attempt + ".part", "done/x/" + run + hash.charAt(0), hash);
    }

    private static void publish(Hand hand, RunId run) {
        int n = claim(hand, run).attempt();
        assertThat(hand.fence().publishing(run, n, staged(run, n, Studio.HASH))).isEqualTo(VALID);
        assertThat(hand.fence().published(run, n, DONE)).isEqualTo(VALID);
    }
}
