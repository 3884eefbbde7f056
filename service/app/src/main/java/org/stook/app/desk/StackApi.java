package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stook.app.stack.Stacks;

/** Stacks and their frames as JSON. */
@RestController
@RequestMapping("/api")
class StackApi {
    private final StackView view;
    private final StackOrders orders;

    StackApi(StackView view, StackOrders orders) {
        this.view = view;
        this.orders = orders;
    }

    @GetMapping("/stacks")
    List<Stacks.Stack> stacks(@RequestParam(defaultValue = "100") int limit) {
        return view.latest(Api.bounded(limit));
    }

    @GetMapping("/stacks/{id}")
    StackView.Detail stack(@PathVariable long id) {
        return view.of(id);
    }

    /** Stacks of other views of the same subject. */
    @GetMapping("/stacks/{id}/views")
    List<Stacks.Stack> views(@PathVariable long id) {
        return view.views(id);
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

    @PostMapping("/stacks/{id}/name")
    Stacks.Stack name(
            @PathVariable long id,
            @RequestParam String subject,
            @RequestParam(defaultValue = "") String view,
            HttpServletRequest request) {
        return orders.name(id, subject, view, Visitor.of(request));
    }

    /** Takes a stray back; the answer is the stack it is of now. */
    @PostMapping("/files/{id}/restore")
    Stacks.Stack restore(@PathVariable long id, HttpServletRequest request) {
        return orders.restore(id, Visitor.of(request));
    }

    @PostMapping("/files/{id}/set-aside")
    Stacks.Stack setAside(
            @PathVariable long id, @RequestParam(defaultValue = "") String reason, HttpServletRequest request) {
        return orders.setAside(id, reason, Visitor.of(request));
    }
}
