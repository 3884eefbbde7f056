package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stook.app.publish.Publications;
import org.stook.app.queue.Board;
import org.stook.app.queue.Line;

/** Runs and publications as JSON, the same as on the pages. Errors are problem details (RFC 9457). */
@RestController
@RequestMapping("/api")
class Api {
    private static final int MOST = 500;

    private final Board board;
    private final Publications publications;
    private final Orders orders;
    private final BulkOrders bulk;
    private final QueueView.Source queue;

    Api(Board board, Publications publications, Orders orders, BulkOrders bulk, QueueView.Source queue) {
        this.bulk = bulk;
        this.queue = queue;
        this.board = board;
        this.publications = publications;
        this.orders = orders;
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

    /** @param run whom the order is for, at most 500 */
    record Many(
            @Nullable List<Long> run,
            @Nullable String order,
            @Nullable Integer priority) {}

    /** One order for many runs: hold, release, cancel, retry or priority. */
    @PostMapping("/runs")
    BulkOrders.Outcome orderMany(@RequestBody Many many, HttpServletRequest request) {
        return bulk.order(
                many.run() == null ? List.of() : many.run(),
                many.order() == null ? "" : many.order(),
                many.priority(),
                Visitor.of(request));
    }

    /** Runs as on the queue page; {@code next} of the answer as {@code after} for the next page. */
    @GetMapping("/runs")
    Line.Page runs(@ModelAttribute QueueForm form, @RequestParam(defaultValue = "") String after) {
        return queue.line().page(form.wanted(queue.words().zoneId()), after);
    }

    static int bounded(int limit) {
        return Math.max(1, Math.min(MOST, limit));
    }
}
