package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stook.app.publish.Publications;
import org.stook.app.queue.Board;
import org.stook.app.stack.Stacks;

/** The same as the pages, as JSON. Errors are problem details (RFC 9457). */
@RestController
@RequestMapping("/api")
class Api {
    private static final int MOST = 500;

    record StackDetail(
            Stacks.Stack stack,
            List<Stacks.Item> files,
            List<Board.Run> runs,
            List<Publications.Publication> publications) {}

    private final Stacks stacks;
    private final Board board;
    private final Publications publications;
    private final Orders orders;

    Api(Stacks stacks, Board board, Publications publications, Orders orders) {
        this.stacks = stacks;
        this.board = board;
        this.publications = publications;
        this.orders = orders;
    }

    @GetMapping("/stacks")
    List<Stacks.Stack> stacks(@RequestParam(defaultValue = "100") int limit) {
        return stacks.latest(bounded(limit));
    }

    @GetMapping("/stacks/{id}")
    StackDetail stack(@PathVariable long id) {
        Stacks.Stack stack = stacks.find(id).orElseThrow(() -> Refusal.notFound("there is no stack " + id));
        return new StackDetail(stack, stacks.items(id), board.ofStack(id), publications.ofStack(id));
    }

    @GetMapping("/runs/{id}")
    Board.Run run(@PathVariable long id) {
        return board.find(id).orElseThrow(() -> Refusal.notFound("there is no run " + id));
    }

    @GetMapping("/publications")
    List<Publications.Publication> publications(@RequestParam(defaultValue = "100") int limit) {
        return publications.latest(bounded(limit));
    }

    @PostMapping("/runs/{id}/{verb}")
    Board.Run order(@PathVariable long id, @PathVariable String verb, HttpServletRequest request) {
        return orders.order(id, Orders.Verb.of(verb), Visitor.of(request));
    }

    @PostMapping("/stacks/{id}/on-table")
    Stacks.Stack onTable(
            @PathVariable long id, @RequestParam(defaultValue = "true") boolean value, HttpServletRequest request) {
        return orders.mark(id, value, Visitor.of(request));
    }

    @PostMapping("/stacks/{id}/seal")
    Stacks.Stack seal(@PathVariable long id, HttpServletRequest request) {
        return orders.seal(id, Visitor.of(request));
    }

    private static int bounded(int limit) {
        return Math.max(1, Math.min(MOST, limit));
    }
}
