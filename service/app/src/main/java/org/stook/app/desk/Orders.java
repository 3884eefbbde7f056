package org.stook.app.desk;

import java.util.Locale;
import org.springframework.stereotype.Component;
import org.stook.app.queue.Board;
import org.stook.orders.Change;
import org.stook.orders.RunId;
import org.stook.orders.Runs;

/** What a person may order of runs, the same for page and API. */
@Component
class Orders {
    /** The verbs for a run. */
    enum Verb {
        HOLD,
        RELEASE,
        CANCEL,
        RETRY;

        static Verb of(String word) {
            for (Verb verb : values()) {
                if (verb.word().equals(word)) {
                    return verb;
                }
            }
            throw Refusal.notFound("there is no order '" + word + "', only hold, release, cancel and retry");
        }

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private final Runs runs;
    private final Board board;

    Orders(Runs runs, Board board) {
        this.runs = runs;
        this.board = board;
    }

    /** @throws Refusal if there is no such run or its state does not allow it */
    Board.Run order(long id, Verb verb, String actor) {
        RunId run = known(id);
        Change change = switch (verb) {
            case HOLD -> runs.hold(run, actor, "Held by hand; it waits until it is released.");
            case RELEASE -> runs.release(run, actor);
            case CANCEL -> runs.cancel(run, actor, "Cancelled by hand.");
            case RETRY -> runs.retry(run, actor);
        };
        if (!change.done()) {
            throw Refusal.conflict("run %d is %s, so it cannot be told to %s"
                    .formatted(id, change.state().name().toLowerCase(Locale.ROOT), verb.word()));
        }
        return board.find(id).orElseThrow();
    }

    /** @param priority 0 to 100; the higher goes first */
    Board.Run prioritise(long id, int priority, String actor) {
        Change change = runs.prioritise(known(id), priority, actor);
        if (!change.done()) {
            throw Refusal.conflict("run %d is %s, so its priority changes nothing"
                    .formatted(id, change.state().name().toLowerCase(Locale.ROOT)));
        }
        return board.find(id).orElseThrow();
    }

    private RunId known(long id) {
        if (board.find(id).isEmpty()) {
            throw Refusal.notFound("there is no run " + id);
        }
        return new RunId(id);
    }
}
