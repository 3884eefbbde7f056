package org.stook.app.desk;

import java.util.Locale;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.stook.app.queue.OnTable;
import org.stook.app.stack.Naming;
import org.stook.app.stack.Sealed;
import org.stook.app.stack.Sealing;
import org.stook.app.stack.Stacks;
import org.stook.app.stack.Strays;

/** What a person may order of stacks and their frames, the same for page and API. */
@Component
class StackOrders {
    /** What changes a stack's frames. */
    @Component
    record Sorting(Sealing sealing, Strays strays, Naming naming) {}

    private final Stacks stacks;
    private final OnTable onTable;
    private final Sorting sorting;

    StackOrders(Stacks stacks, OnTable onTable, Sorting sorting) {
        this.stacks = stacks;
        this.onTable = onTable;
        this.sorting = sorting;
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
        Sealed outcome = sorting.sealing().seal(id, actor);
        if (outcome instanceof Sealed.NotYet not) {
            throw Refusal.conflict("stack " + id + " cannot be sealed: " + not.reason());
        }
        if (outcome instanceof Sealed.Over over) {
            throw Refusal.conflict("stack " + id + " is " + over.state().toLowerCase(Locale.ROOT) + " already");
        }
        return stacks.find(id).orElseThrow();
    }

    /** @throws Refusal if the name cannot be one or the stack collects no more */
    Stacks.Stack name(long id, String subject, String view, String actor) {
        if (stacks.find(id).isEmpty()) {
            throw Refusal.notFound("there is no stack " + id);
        }
        try {
            if (!sorting.naming().name(id, subject, view, actor)) {
                throw Refusal.conflict("stack " + id + " is sealed, so its name stays");
            }
        } catch (IllegalArgumentException e) {
            throw Refusal.unfit(String.valueOf(e.getMessage()));
        }
        return stacks.find(id).orElseThrow();
    }

    /** @return the stack that the frame is of now, the next version if it was sealed */
    Stacks.Stack restore(long file, String actor) {
        return moved(file, () -> sorting.strays().restore(file, actor));
    }

    /** @return likewise */
    Stacks.Stack setAside(long file, String reason, String actor) {
        return moved(file, () -> sorting.strays().setAside(file, reason, actor));
    }

    private interface Move {
        Optional<Strays.Moved> done();
    }

    private Stacks.Stack moved(long file, Move move) {
        try {
            Strays.Moved moved = move.done().orElseThrow(() -> Refusal.notFound("there is no file " + file));
            return stacks.find(moved.stack()).orElseThrow();
        } catch (IllegalStateException e) {
            throw Refusal.conflict(String.valueOf(e.getMessage()));
        }
    }
}
