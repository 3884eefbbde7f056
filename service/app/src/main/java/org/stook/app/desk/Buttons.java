package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.regex.Pattern;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The buttons for runs: do it, then show the page again with a line on what came of it. */
@Controller
class Buttons {
    static final String NOTE = "note";

    /** The queue page and nothing else: nobody is sent to another address by a form. */
    private static final Pattern QUEUE = Pattern.compile("/(\\?[^\\r\\n]*)?");

    private final Orders orders;
    private final BulkOrders bulk;

    Buttons(Orders orders, BulkOrders bulk) {
        this.orders = orders;
        this.bulk = bulk;
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

    /** @param back address of the queue page with what was asked for */
    @PostMapping("/runs")
    String orderMany(
            @RequestParam(defaultValue = "") List<Long> run,
            @RequestParam String order,
            @RequestParam(defaultValue = "") String priority,
            @RequestParam(defaultValue = "/") String back,
            HttpServletRequest request,
            RedirectAttributes after) {
        then(0, after, () -> {
            Integer number = order.equals("priority") ? Said.number("priority", priority, 100) : null;
            return bulk.order(run, order, number, Visitor.of(request)).sentence(order);
        });
        return "redirect:" + (QUEUE.matcher(back).matches() ? back : "/");
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
