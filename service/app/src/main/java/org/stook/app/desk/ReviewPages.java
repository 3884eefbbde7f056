package org.stook.app.desk;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.stook.app.review.Dossier;
import org.stook.app.review.Points;

/** A touched place of a composite, and two composites side by side. */
@Controller
class ReviewPages {
    private final StackView view;
    private final Dossier dossier;
    private final Points points;

    ReviewPages(StackView view, Dossier dossier, Points points) {
        this.view = view;
        this.dossier = dossier;
        this.points = points;
    }

    /** @param middle rank of the frame to show in the middle, if not the one that the place came from */
    @GetMapping("/runs/{run}/point")
    String point(
            @PathVariable long run,
            @RequestParam double x,
            @RequestParam double y,
            @RequestParam Optional<Integer> middle,
            Model model)
            throws IOException {
        model.addAttribute(
                "point",
                points.at(run, x, y, middle)
                        .orElseThrow(() -> Refusal.notFound("Run " + run + " was published without maps.")));
        return "point";
    }

    @GetMapping("/stacks/{id}/compare")
    String compare(@PathVariable long id, @RequestParam long left, @RequestParam long right, Model model) {
        StackView.Detail detail = view.of(id);
        model.addAttribute("stack", detail.stack());
        model.addAttribute("publications", detail.publications());
        model.addAttribute("pair", List.of(published(detail, left), published(detail, right)));
        return "compare";
    }

    private Dossier.Case published(StackView.Detail detail, long run) {
        return detail.publications().stream()
                .filter(p -> p.runId() == run)
                .findFirst()
                .flatMap(p -> dossier.of(run))
                .orElseThrow(
                        () -> Refusal.notFound("Stack " + detail.stack().id() + " has no published run " + run + "."));
    }
}
