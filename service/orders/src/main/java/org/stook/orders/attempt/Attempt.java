package org.stook.orders.attempt;

import com.github.kagkarlsson.scheduler.task.ExecutionContext;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.transaction.TransactionException;
import org.stook.orders.WorkOrder;

/** One claimed run in the hands of a worker: what to do, and the only way to report on it. */
public final class Attempt {
    private static final Logger LOG = LoggerFactory.getLogger(Attempt.class);
    /** Share of the time to be silent in after which others may take the run: stop before they do. */
    private static final double CLOSE_TO_DEATH = 0.7;

    /** What the process knows without the database. */
    interface Pulse {
        boolean draining();

        /** 0: heard of just now, 1: may be taken for dead. */
        double fractionDead();
    }

    static final Pulse UNDISTURBED = new Pulse() {
        @Override
        public boolean draining() {
            return false;
        }

        @Override
        public double fractionDead() {
            return 0;
        }
    };

    private final Claim.Taken claim;
    private final Fence fence;
    private final Pulse pulse;
    private final long since;

    /** @param since when its claim began, {@link System#nanoTime} */
    Attempt(Claim.Taken claim, Fence fence, Pulse pulse, long since) {
        this.claim = claim;
        this.fence = fence;
        this.pulse = pulse;
        this.since = since;
    }

    static Pulse pulseOf(ExecutionContext context) {
        return new Pulse() {
            @Override
            public boolean draining() {
                return context.getSchedulerState().isShuttingDown();
            }

            @Override
            public double fractionDead() {
                return context.getCurrentlyExecuting().getHeartbeatState().getFractionDead();
            }
        };
    }

    /** How long ago its claim began. */
    public Duration age() {
        return Duration.ofNanos(System.nanoTime() - since);
    }

    public WorkOrder order() {
        return claim.order();
    }

    /**
     * What an earlier attempt staged beyond the point of no return, before it was lost; usually null. If the final file has
     * its hash, only {@link #published} is missing; if the staged one has it, the rename too; else call
     * {@link #stagedResultLost} and compute again.
     */
    public @Nullable StagedResult staged() {
        return claim.staged();
    }

    /**
     * Tells where the attempt is and hears whether it may go on; to be called after every frame. While the database is away
     * the work goes on: only publishing needs it.
     *
     * @param stage name of the stage
     * @param fraction of the whole run, 0 to 1
     */
    public Standing progress(String stage, double fraction) {
        if (pulse.fractionDead() > CLOSE_TO_DEATH) {
            return Standing.LEASE_LOST;
        }
        try {
            Standing standing = fence.progress(order().run(), order().attempt(), stage, fraction);
            return standing == Standing.VALID && pulse.draining() ? Standing.DRAIN : standing;
        } catch (DataAccessException | TransactionException e) {
            LOG.warn("run {}: the database does not take progress ({}); working on", order().run(), e.getMessage());
            return pulse.draining() ? Standing.DRAIN : Standing.VALID;
        }
    }

    /**
     * The largest heap among the other workers, bytes; 0 if there is none. Whoever cannot take the run learns here whether
     * somebody else can.
     */
    public long largestOtherWorker() {
        return fence.largestOtherWorker();
    }

    /** Notes which batch job execution works on the attempt, for whoever looks for its steps. */
    public void workedOnBy(long batchExecutionId) {
        fence.workedOnBy(order().run(), order().attempt(), batchExecutionId);
    }

    /** Where an earlier attempt found the frames to lie, as it said; empty also while the database is away. */
    public Optional<String> savedPlacements() {
        return order().attempt() == 1 ? Optional.empty() : fence.placements().saved(order().run());
    }

    /** Notes that this attempt goes by the saved placements. */
    public void tookPlacements() {
        fence.placements().taken(order().run(), order().attempt());
    }

    /** Saves where the frames lie, so that an attempt that takes over need not find out again. */
    public void savePlacements(String text) {
        fence.placements().save(order().run(), order().attempt(), text);
    }

    /**
     * The point of no return: from here on the result will be published, by this attempt or by the one that takes over. The
     * file may be moved to its final name after {@link Standing#VALID} only. Sits out an outage of the database.
     */
    public Standing publishing(StagedResult result) {
        return fence.publishing(order().run(), order().attempt(), result);
    }

    /** What an earlier attempt staged is gone: this one computes again. */
    public Standing stagedResultLost() {
        return fence.stagedResultLost(order().run(), order().attempt());
    }

    /**
     * The file stands under its final name: makes it official and supersedes the stack's publication so far. Sits out an
     * outage of the database.
     */
    public Standing published(PublishedResult result) {
        return fence.published(order().run(), order().attempt(), result);
    }
}
