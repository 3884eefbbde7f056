package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.stook.app.stack.Stacks;

/** The buttons for stacks and their frames. */
@Controller
class StackButtons {
    private final StackOrders orders;

    StackButtons(StackOrders orders) {
        this.orders = orders;
    }

    @PostMapping("/stacks/{id}/on-table")
    String onTable(
            @PathVariable long id,
            @RequestParam boolean value,
            @RequestParam(defaultValue = "0") long stack,
            HttpServletRequest request,
            RedirectAttributes after) {
        return Buttons.then(stack, after, () -> {
            String subject = orders.mark(id, value, Visitor.of(request)).subject();
            return value
                    ? subject + " is on the table: its runs go first."
                    : subject + " is off the table: its runs wait their turn.";
        });
    }

    @PostMapping("/stacks/{id}/seal")
    String seal(
            @PathVariable long id,
            @RequestParam(defaultValue = "0") long stack,
            HttpServletRequest request,
            RedirectAttributes after) {
        return Buttons.then(
                stack,
                after,
                () -> "Stack %d (%s) was sealed."
                        .formatted(id, orders.seal(id, Visitor.of(request)).subject()));
    }

    @PostMapping("/stacks/{id}/name")
    String name(
            @PathVariable long id,
            @RequestParam String subject,
            @RequestParam(defaultValue = "") String view,
            @RequestParam(defaultValue = "0") long stack,
            HttpServletRequest request,
            RedirectAttributes after) {
        return Buttons.then(
                stack,
                after,
                () -> "Stack %d is %s now; it is sealed when all its frames are together."
                        .formatted(
                                id,
                                orders.name(id, subject, view, Visitor.of(request))
                                        .subject()));
    }

    @PostMapping("/files/{id}/restore")
    String restore(
            @PathVariable long id, @RequestParam long stack, HttpServletRequest request, RedirectAttributes after) {
        return moved(stack, after, "taken back", () -> orders.restore(id, Visitor.of(request)));
    }

    @PostMapping("/files/{id}/set-aside")
    String setAside(
            @PathVariable long id, @RequestParam long stack, HttpServletRequest request, RedirectAttributes after) {
        return moved(stack, after, "set aside", () -> orders.setAside(id, "", Visitor.of(request)));
    }

    private interface Move {
        Stacks.Stack done();
    }

    private static String moved(long stack, RedirectAttributes after, String done, Move move) {
        try {
            Stacks.Stack now = move.done();
            after.addFlashAttribute(
                    Buttons.NOTE,
                    now.id() == stack
                            ? "The frame was " + done + "."
                            : "The frame was %s. This is version %d of the stack; %s."
                                    .formatted(
                                            done,
                                            now.standing().version(),
                                            now.state().equals("SEALED") ? "its run waits" : "it is not sealed yet"));
            return "redirect:/stacks/" + now.id();
        } catch (Refusal refusal) {
            after.addFlashAttribute(Buttons.NOTE, "Nothing was done: " + refusal.getReason() + ".");
            return "redirect:/stacks/" + stack;
        }
    }
}
