package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.stook.app.queue.Board;
import org.stook.app.review.Points;
import org.stook.app.review.Reviews;
import tools.jackson.databind.JsonNode;

/** Reviews as JSON, the same as on the pages. */
@RestController
@RequestMapping("/api")
class ReviewApi {
    /** @param reason for sending back */
    record Verdict(@Nullable String reason) {}

    private final ReviewOrders orders;
    private final Points points;
    private final Reviews reviews;

    ReviewApi(ReviewOrders orders, Points points, Reviews reviews) {
        this.orders = orders;
        this.points = points;
        this.reviews = reviews;
    }

    @GetMapping("/runs/{id}/review")
    Reviews.Review review(@PathVariable long id) {
        return reviews.of(id).orElseThrow(() -> Refusal.notFound("nobody has judged run " + id));
    }

    @PostMapping("/runs/{id}/accept")
    Reviews.Review accept(@PathVariable long id, HttpServletRequest request) {
        return orders.accept(id, Visitor.of(request));
    }

    @PostMapping("/runs/{id}/send-back")
    Reviews.Review sendBack(@PathVariable long id, @RequestBody Verdict verdict, HttpServletRequest request) {
        return orders.sendBack(id, verdict.reason() == null ? "" : verdict.reason(), Visitor.of(request));
    }

    /** Which frame a place of a composite came from. @param x pixels of the composite, likewise y */
    @GetMapping("/runs/{id}/point")
    Points.Point point(@PathVariable long id, @RequestParam double x, @RequestParam double y) throws IOException {
        return points.at(id, x, y, java.util.Optional.empty())
                .orElseThrow(() -> Refusal.notFound("run " + id + " was published without maps"));
    }

    /** Orders a run with these settings, all of them. */
    @PostMapping(path = "/stacks/{id}/runs", consumes = MediaType.APPLICATION_JSON_VALUE)
    @ResponseStatus(HttpStatus.ACCEPTED)
    Board.Run again(
            @PathVariable long id,
            @RequestBody JsonNode settings,
            @RequestParam(defaultValue = "") String note,
            HttpServletRequest request) {
        return orders.again(id, settings, note, Visitor.of(request));
    }
}
