package org.stook.app.desk;

import java.util.List;
import org.springframework.stereotype.Component;
import org.stook.app.publish.Publications;
import org.stook.app.queue.Board;
import org.stook.app.stack.Stacks;

/** Gathers what is shown of one stack. */
@Component
class StackView {
    /** A stack with all that belongs to it. */
    record Detail(
            Stacks.Stack stack,
            List<Stacks.Item> files,
            List<Board.Run> runs,
            List<Publications.Publication> publications) {}

    private final Stacks stacks;
    private final Board board;
    private final Publications publications;

    StackView(Stacks stacks, Board board, Publications publications) {
        this.stacks = stacks;
        this.board = board;
        this.publications = publications;
    }

    Detail of(long id) {
        Stacks.Stack stack = stacks.find(id).orElseThrow(() -> Refusal.notFound("There is no stack " + id + "."));
        return new Detail(stack, stacks.items(id), board.ofStack(id), publications.ofStack(id));
    }

    List<Stacks.Stack> views(long id) {
        return stacks.views(id);
    }

    List<Stacks.Stack> latest(int limit) {
        return stacks.latest(limit);
    }
}
