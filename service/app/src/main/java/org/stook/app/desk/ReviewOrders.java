package org.stook.app.desk;

import org.springframework.stereotype.Component;
import org.stook.app.queue.Board;
import org.stook.app.review.Reruns;
import org.stook.app.review.Reviews;
import tools.jackson.databind.JsonNode;

/** What a person may order of composites, the same for page and API. */
@Component
class ReviewOrders {
    private final Reviews reviews;
    private final Reruns reruns;
    private final Board board;

    ReviewOrders(Reviews reviews, Reruns reruns, Board board) {
        this.reviews = reviews;
        this.reruns = reruns;
        this.board = board;
    }

    Reviews.Review accept(long run, String actor) {
        return written(run, reviews.accept(run, actor));
    }

    /** @throws Refusal if there is no such composite or no reason */
    Reviews.Review sendBack(long run, String reason, String actor) {
        try {
            return written(run, reviews.sendBack(run, reason, actor));
        } catch (IllegalArgumentException e) {
            throw Refusal.unfit(String.valueOf(e.getMessage()));
        }
    }

    private Reviews.Review written(long run, boolean done) {
        if (!done) {
            throw Refusal.conflict("run " + run + " is not published, so there is nothing to judge");
        }
        return reviews.of(run).orElseThrow();
    }

    /** @throws Refusal if the settings make no sense or the stack is not sealed */
    Board.Run again(long stack, JsonNode settings, String note, String actor) {
        try {
            return board.find(reruns.order(stack, settings, note, actor)).orElseThrow();
        } catch (IllegalArgumentException e) {
            throw Refusal.unfit(String.valueOf(e.getMessage()));
        } catch (IllegalStateException e) {
            throw Refusal.conflict(String.valueOf(e.getMessage()));
        }
    }
}
