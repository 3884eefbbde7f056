package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.stook.app.review.Reruns;
import org.stook.app.review.SettingsDraft;
import tools.jackson.databind.json.JsonMapper;

/** The buttons of a review: accept, send back, make it again. */
@Controller
class ReviewButtons {
    private final ReviewOrders orders;
    private final Reruns reruns;
    private final JsonMapper json = JsonMapper.builder().build();

    ReviewButtons(ReviewOrders orders, Reruns reruns) {
        this.orders = orders;
        this.reruns = reruns;
    }

    @PostMapping("/runs/{id}/accept")
    String accept(
            @PathVariable long id,
            @RequestParam(defaultValue = "0") long stack,
            HttpServletRequest request,
            RedirectAttributes after) {
        return Buttons.then(stack, after, () -> {
            orders.accept(id, Visitor.of(request));
            return "The composite of run %d is accepted.".formatted(id);
        });
    }

    @PostMapping("/runs/{id}/send-back")
    String sendBack(
            @PathVariable long id,
            @RequestParam(defaultValue = "0") long stack,
            @RequestParam(defaultValue = "") String reason,
            HttpServletRequest request,
            RedirectAttributes after) {
        return Buttons.then(stack, after, () -> {
            orders.sendBack(id, reason, Visitor.of(request));
            return "The composite of run %d is sent back.".formatted(id);
        });
    }

    /** @param base run whose other settings hold, 0 for none */
    @PostMapping("/stacks/{id}/runs")
    String again(
            @PathVariable long id,
            @RequestParam(defaultValue = "0") long base,
            @RequestParam(defaultValue = "") String note,
            @ModelAttribute SettingsDraft draft,
            HttpServletRequest request,
            RedirectAttributes after) {
        return Buttons.then(id, after, () -> {
            try {
                var settings = draft.over(reruns.settings(base).orElseGet(json::createObjectNode));
                long run = orders.again(id, settings, note, Visitor.of(request)).id();
                return "Run %d is ordered with these settings.".formatted(run);
            } catch (IllegalArgumentException e) {
                throw Refusal.unfit(String.valueOf(e.getMessage()));
            }
        });
    }
}
