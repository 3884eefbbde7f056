package org.stook.app.desk;

import java.util.Locale;
import org.springframework.stereotype.Component;
import org.stook.app.queue.Board;
import org.stook.app.queue.OnTable;
import org.stook.app.stack.Sealed;
import org.stook.app.stack.Sealing;
import org.stook.app.stack.Stacks;
import org.stook.orders.Change;
import org.stook.orders.RunId;
import org.stook.orders.Runs;

/** What a person may order, the same for page and API. */
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
    private final Stacks stacks;
    private final OnTable onTable;
    private final Sealing sealing;

    Orders(Runs runs, Board board, Stacks stacks, OnTable onTable, Sealing sealing) {
        this.runs = runs;
        this.board = board;
        this.stacks = stacks;
        this.onTable = onTable;
        this.sealing = sealing;
    }

    /** @throws Refusal if there is no such run or its state does not allow it */
    Board.Run order(long id, Verb verb, String actor) {
        if (board.find(id).isEmpty()) {
            throw Refusal.notFound("there is no run " + id);
        }
        RunId run = new RunId(id);
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

    Stacks.Stack mark(long id, boolean value, String actor) {
        if (!onTable.mark(id, value, actor)) {
            throw Refusal.notFound("there is no stack " + id);
        }
        return stacks.find(id).orElseThrow();
    }

    /** @throws Refusal if there is nothing to seal; the sentence says why */
    Stacks.Stack seal(long id, String actor) {
        if (stacks.find(id).isEmpty()) {
            throw Refusal.notFound("there is no stack " + id);
        }
        Sealed outcome = sealing.seal(id, actor);
        if (outcome instanceof Sealed.NotYet not) {
            throw Refusal.conflict("stack " + id + " cannot be sealed: " + not.reason());
        }
        if (outcome instanceof Sealed.Over over) {
            throw Refusal.conflict("stack " + id + " is " + over.state().toLowerCase(Locale.ROOT) + " already");
        }
        return stacks.find(id).orElseThrow();
    }
}
