package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.stook.app.archive.Archive;
import org.stook.app.archive.Holding;
import org.stook.app.archive.Pulls;
import org.stook.app.archive.bag.Packages;
import org.stook.app.publish.Publications;

/** The archive page. */
@Controller
class ArchivePages {
    private static final int PAGE = 50;
    private static final int PACKAGES = 10;

    private final Archive archive;
    private final Pulls pulls;
    private final Packages packages;
    private final BagApi bags;
    private final Publications publications;
    private final Words words;

    ArchivePages(Archive archive, Pulls pulls, Packages packages, BagApi bags, Publications publications, Words words) {
        this.archive = archive;
        this.pulls = pulls;
        this.packages = packages;
        this.bags = bags;
        this.publications = publications;
        this.words = words;
    }

    @GetMapping("/archive")
    String archive(
            @ModelAttribute("form") ArchiveForm form,
            @RequestParam(required = false) @Nullable Long before,
            Model model) {
        List<Holding> found = List.of();
        try {
            found = archive.find(form.query(ZoneId.of(words.zone())), before, PAGE);
        } catch (ResponseStatusException e) {
            model.addAttribute("refused", e.getReason());
        }
        model.addAttribute("found", found);
        model.addAttribute(
                "next", found.size() < PAGE ? null : found.get(PAGE - 1).seq());
        model.addAttribute("first", before == null);
        model.addAttribute("settingsUsed", archive.settingsUsed());
        model.addAttribute("pulls", pulls.all());
        packed(model);
        return "archive";
    }

    /** How far the packages are; fetched anew while one is being made ready. */
    @GetMapping("/archive/packages")
    String packages(Model model) {
        packed(model);
        return "archive :: packages";
    }

    private void packed(Model model) {
        List<Packages.Package> latest = packages.latest(PACKAGES);
        model.addAttribute("packages", latest);
        model.addAttribute("open", latest.stream().anyMatch(p -> p.state().equals("PREPARING")));
    }

    @PostMapping("/archive/packages")
    String pack(
            @ModelAttribute ArchiveForm form,
            @RequestParam(defaultValue = "named") String frames,
            HttpServletRequest request,
            RedirectAttributes after) {
        try {
            bags.order(form, null, frames, request);
            after.addFlashAttribute("note", "The package is being made ready; it can be fetched below in a moment.");
        } catch (ResponseStatusException e) {
            after.addFlashAttribute("refused", e.getReason());
        }
        after.addAllAttributes(form.said());
        return "redirect:/archive";
    }

    @PostMapping("/archive/pulls")
    String save(
            @ModelAttribute ArchiveForm form,
            @RequestParam String name,
            HttpServletRequest request,
            RedirectAttributes after) {
        try {
            pulls.save(name.strip(), form.query(ZoneId.of(words.zone())), Visitor.of(request));
            after.addFlashAttribute("note", "The pull “" + name.strip() + "” is saved.");
        } catch (IllegalArgumentException e) {
            after.addFlashAttribute("refused", "Name of the pull: " + e.getMessage());
        } catch (ResponseStatusException e) {
            after.addFlashAttribute("refused", e.getReason());
        }
        after.addAllAttributes(form.said());
        return "redirect:/archive";
    }

    @GetMapping("/archive/thumbnails/{run}")
    ResponseEntity<Resource> thumbnail(@PathVariable long run) {
        Path file =
                publications.thumbnail(run).orElseThrow(() -> Refusal.notFound("Run " + run + " has no thumbnail."));
        return ResponseEntity.ok()
                .contentType(MediaType.IMAGE_JPEG)
                // A publication never changes.
                .cacheControl(CacheControl.maxAge(Duration.ofDays(1)).cachePrivate())
                .body(new FileSystemResource(file));
    }
}
