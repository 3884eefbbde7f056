package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The buttons for runs: do it, then show the page again with a line on what came of it. */
@Controller
class Buttons {
    static final String NOTE = "note";

    private final Orders orders;

    Buttons(Orders orders) {
        this.orders = orders;
    }

    @PostMapping("/runs/{id}/{verb}")
    String order(
            @PathVariable long id,
            @PathVariable String verb,
            @RequestParam(defaultValue = "0") long stack,
            HttpServletRequest request,
            RedirectAttributes after) {
        return then(stack, after, () -> {
            var run = orders.order(id, Orders.Verb.of(verb), Visitor.of(request));
            return "Run %d (%s) is now: %s."
                    .formatted(id, run.subject(), Words.state(run.state(), run.cancelRequested()));
        });
    }

    interface Act {
        String done();
    }

    static String then(long stack, RedirectAttributes after, Act act) {
        try {
            after.addFlashAttribute(NOTE, act.done());
        } catch (Refusal refusal) {
            after.addFlashAttribute(NOTE, "Nothing was done: " + refusal.getReason() + ".");
        }
        return stack > 0 ? "redirect:/stacks/" + stack : "redirect:/";
    }
}
