package org.stook.app.desk;

import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import org.stook.app.desk.live.Parts;
import org.stook.app.desk.live.Snapshot;
import org.stook.app.desk.live.View;
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

    /** The parts of the page of a stack that change by themselves. */
    record Live(StackView source, long id) implements View {
        @Override
        public Map<String, String> parts(Supplier<Snapshot> now, Parts parts) {
            Detail detail = source.of(id);
            List<Board.Run> runs =
                    detail.runs().stream().map(Board.Run::standing).toList();
            return Map.of(
                    "counts", parts.of("stack-live", "counts", Map.of("stack", detail.stack())),
                    "runs", parts.of("stack-live", "runs", Map.of("stack", detail.stack(), "runs", runs)),
                    "frames",
                            parts.of("stack-live", "frames", Map.of("stack", detail.stack(), "items", detail.files())));
        }
    }

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
