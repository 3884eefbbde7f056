package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.http.MediaType;
import org.springframework.http.MediaTypeFactory;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stook.app.archive.Archive;
import org.stook.app.archive.Holding;
import org.stook.app.archive.Originals;
import org.stook.app.archive.Pulls;
import org.stook.app.publish.Publications;

/** The archive for programs: search, what is new, saved pulls, original frames by their hash. */
@RestController
@RequestMapping("/api/archive")
class ArchiveApi {
    /** @param next what to say as {@code before} for the next page; left out on the last one */
    record Page(List<Holding> items, @Nullable Long next) {}

    private final Archive archive;
    private final Pulls pulls;
    private final Originals originals;
    private final Publications publications;
    private final Words words;

    ArchiveApi(Archive archive, Pulls pulls, Originals originals, Publications publications, Words words) {
        this.archive = archive;
        this.pulls = pulls;
        this.originals = originals;
        this.publications = publications;
        this.words = words;
    }

    @GetMapping("/publications")
    Page find(
            @ModelAttribute ArchiveForm form,
            @RequestParam(required = false) @Nullable Long before,
            @RequestParam(defaultValue = "100") int limit) {
        int bounded = Api.bounded(limit);
        List<Holding> items = archive.find(form.query(ZoneId.of(words.zone())), before, bounded);
        return new Page(
                items, items.size() < bounded ? null : items.get(bounded - 1).seq());
    }

    @GetMapping("/publications/{run}")
    Holding one(@PathVariable long run) {
        return archive.ofRun(run).orElseThrow(() -> Refusal.notFound("Run " + run + " is not published."));
    }

    /** A file of a publication by its kind: master, derivative, preview, thumbnail, source-map, depth-map, record. */
    @GetMapping("/publications/{run}/files/{kind}")
    ResponseEntity<Resource> file(@PathVariable long run, @PathVariable String kind) {
        Path file = publications
                .file(run, kind)
                .orElseThrow(() -> Refusal.notFound("Run " + run + " has no file of the kind '" + kind + "'."));
        return ResponseEntity.ok()
                .contentType(MediaTypeFactory.getMediaType(file.toString()).orElse(MediaType.APPLICATION_OCTET_STREAM))
                .header("Content-Disposition", "inline; filename=\"" + file.getFileName() + '"')
                .body(new FileSystemResource(file));
    }

    /** Come back with {@code next} of the answer as {@code after}: every publication comes once, none is missed. */
    @GetMapping("/new")
    Archive.New since(
            @ModelAttribute ArchiveForm form,
            @RequestParam(defaultValue = "0") long after,
            @RequestParam(defaultValue = "100") int limit) {
        return archive.since(after, form.query(ZoneId.of(words.zone())), Api.bounded(limit));
    }

    @GetMapping("/pulls")
    List<Pulls.Pull> pulls() {
        return pulls.all();
    }

    @PutMapping("/pulls/{name}")
    Pulls.Pull save(@PathVariable String name, @ModelAttribute ArchiveForm form, HttpServletRequest request) {
        try {
            pulls.save(name, form.query(ZoneId.of(words.zone())), Visitor.of(request));
        } catch (IllegalArgumentException e) {
            throw Refusal.unfit("name: " + e.getMessage());
        }
        return pull(name);
    }

    @GetMapping("/pulls/{name}")
    Pulls.Pull pull(@PathVariable String name) {
        return pulls.find(name).orElseThrow(() -> Refusal.notFound("There is no pull '" + name + "'."));
    }

    /** What is new since what was said to be taken; asking does not move it. */
    @GetMapping("/pulls/{name}/new")
    Archive.New newFor(@PathVariable String name, @RequestParam(defaultValue = "100") int limit) {
        Pulls.Pull pull = pull(name);
        return archive.since(pull.taken(), pull.filter(), Api.bounded(limit));
    }

    /** Everything up to a number is in safe hands; the next question begins behind it. */
    @PostMapping("/pulls/{name}/taken")
    Pulls.Pull taken(@PathVariable String name, @RequestParam long upTo, HttpServletRequest request) {
        pull(name);
        if (!pulls.taken(name, upTo, Visitor.of(request))) {
            throw Refusal.unfit("upTo: found " + upTo + ", expected 0 to " + archive.newest());
        }
        return pull(name);
    }

    /** An original frame as it arrived. */
    @GetMapping("/frames/{sha256}")
    ResponseEntity<Resource> frame(@PathVariable String sha256) {
        return originals
                .find(sha256)
                .<ResponseEntity<Resource>>map(file -> ResponseEntity.ok()
                        .eTag('"' + sha256 + '"')
                        .contentType(MediaType.APPLICATION_OCTET_STREAM)
                        .body(new FileSystemResource(file)))
                .orElseThrow(() -> Refusal.notFound("No frame with the SHA-256 " + sha256 + " is where it was."));
    }
}
