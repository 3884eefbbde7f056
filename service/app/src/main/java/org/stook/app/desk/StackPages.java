package org.stook.app.desk;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.stook.app.audit.AuditTrail;
import org.stook.app.publish.Publications;
import org.stook.app.review.Dossier;
import org.stook.app.review.Reruns;
import org.stook.app.review.SettingsDraft;

/** The page of a stack, and the previews of its composites. */
@Controller
class StackPages {
    private static final int ENTRIES = 200;

    private final StackView view;
    private final Publications publications;
    private final AuditTrail audit;
    private final Reviewing reviewing;

    /** What the part of the page that shows a composite needs. */
    @org.springframework.stereotype.Component
    record Reviewing(Dossier dossier, Reruns reruns) {}

    StackPages(StackView view, Publications publications, AuditTrail audit, Reviewing reviewing) {
        this.view = view;
        this.publications = publications;
        this.audit = audit;
        this.reviewing = reviewing;
    }

    /** @param run whose composite is shown; without it the newest */
    @GetMapping("/stacks/{id}")
    String stack(@PathVariable long id, @RequestParam(defaultValue = "0") long run, Model model) {
        StackView.Detail detail = view.of(id);
        List<String> subjects = Stream.concat(
                        Stream.of("stack/" + id), detail.runs().stream().map(r -> "run/" + r.id()))
                .toList();
        model.addAttribute("stack", detail.stack());
        model.addAttribute("views", view.views(id));
        model.addAttribute("items", detail.files());
        model.addAttribute("runs", detail.runs());
        model.addAttribute("publications", detail.publications());
        model.addAttribute(
                "notes",
                detail.publications().stream()
                        .map(Publications.Publication::runId)
                        .collect(Collectors.toMap(Function.identity(), publications::notes)));
        detail.publications().stream()
                .filter(p -> run == 0 || p.runId() == run)
                .findFirst()
                .ifPresent(p -> review(p, model));
        model.addAttribute("trail", audit.about(subjects, ENTRIES));
        return "stack";
    }

    private void review(Publications.Publication shown, Model model) {
        model.addAttribute("shown", shown);
        model.addAttribute("dossier", reviewing.dossier().of(shown.runId()).orElse(null));
        model.addAttribute("blends", reviewing.dossier().blends());
        model.addAttribute(
                "draft",
                SettingsDraft.of(reviewing
                        .reruns()
                        .settings(shown.runId())
                        .orElse(reviewing.reruns().usual(shown.stackId()))));
    }

    @GetMapping("/previews/{run}")
    ResponseEntity<Resource> preview(@PathVariable long run) {
        Path file = publications.preview(run).orElseThrow(() -> Refusal.notFound("Run " + run + " has no preview."));
        return ResponseEntity.ok()
                .contentType(MediaType.IMAGE_JPEG)
                // A publication never changes.
                .cacheControl(CacheControl.maxAge(Duration.ofDays(1)).cachePrivate())
                .body(new FileSystemResource(file));
    }
}
