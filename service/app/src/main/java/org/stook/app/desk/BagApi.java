package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.stook.app.archive.Archive;
import org.stook.app.archive.ArchiveQuery;
import org.stook.app.archive.Holding;
import org.stook.app.archive.bag.Bags;
import org.stook.app.archive.bag.Frames;
import org.stook.app.archive.bag.Packages;

/** Bags of publications: one at once, many as a package that is made ready in the background. */
@RestController
@RequestMapping("/api/archive")
class BagApi {
    private final Archive archive;
    private final Packages packages;
    private final Bags bags;
    private final Handouts handouts;
    private final Words words;

    BagApi(Archive archive, Packages packages, Bags bags, Handouts handouts, Words words) {
        this.archive = archive;
        this.packages = packages;
        this.bags = bags;
        this.handouts = handouts;
        this.words = words;
    }

    /** The bag of one publication as a tar file; a range of it may be asked for. */
    @GetMapping("/publications/{run}/bag.tar")
    void bag(
            @PathVariable long run,
            @RequestParam(defaultValue = "named") String frames,
            HttpServletRequest request,
            HttpServletResponse response)
            throws IOException {
        if (archive.ofRun(run).isEmpty()) throw Refusal.notFound("Run " + run + " is not published.");
        send(packages.ofRun(run, frames(frames), Visitor.of(request)), request, response);
    }

    /** Orders one bag of all that is found, the newest first. */
    @PostMapping("/packages")
    @ResponseStatus(HttpStatus.ACCEPTED)
    ResponseEntity<Packages.Package> order(
            @ModelAttribute ArchiveForm form,
            @RequestParam(required = false) @Nullable List<Long> run,
            @RequestParam(defaultValue = "named") String frames,
            HttpServletRequest request) {
        List<Long> runs = run == null ? found(form.query(ZoneId.of(words.zone()))) : run;
        for (long one : runs) {
            if (archive.ofRun(one).isEmpty()) throw Refusal.unfit("Run " + one + " is not published.");
        }
        if (runs.isEmpty()) throw Refusal.unfit("Nothing is found, so there is nothing to pack.");
        if (runs.size() > Packages.MOST) {
            throw Refusal.unfit("More than " + Packages.MOST
                    + " publications are found; narrow the search and pack them in parts.");
        }
        long id = packages.order(runs, frames(frames), Visitor.of(request));
        return ResponseEntity.status(HttpStatus.ACCEPTED)
                .header(HttpHeaders.LOCATION, "/api/archive/packages/" + id)
                .body(of(id));
    }

    private List<Long> found(ArchiveQuery query) {
        return archive.find(query, null, Packages.MOST + 1).stream()
                .map(Holding::runId)
                .toList();
    }

    @GetMapping("/packages")
    List<Packages.Package> latest(@RequestParam(defaultValue = "20") int limit) {
        return packages.latest(Api.bounded(limit));
    }

    @GetMapping("/packages/{id}")
    Packages.Package of(@PathVariable long id) {
        return packages.find(id).orElseThrow(() -> Refusal.notFound("There is no package " + id + "."));
    }

    @GetMapping("/packages/{id}/bag.tar")
    void content(@PathVariable long id, HttpServletRequest request, HttpServletResponse response) throws IOException {
        send(of(id), request, response);
    }

    private void send(Packages.Package order, HttpServletRequest request, HttpServletResponse response)
            throws IOException {
        if (order.state().equals("FAILED")) throw Refusal.conflict(String.valueOf(order.reason()));
        if (!order.state().equals("READY")) {
            throw Refusal.conflict("Package " + order.id()
                    + " is not ready yet: %d of %d bytes are read.".formatted(order.bytesDone(), order.bytesTotal()));
        }
        String address = ServletUriComponentsBuilder.fromContextPath(request).toUriString();
        Bags.Laid laid = bags.of(order, address);
        if (Ranges.fromTheStart(request)) handouts.note(order, Visitor.of(request));
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + laid.fileName() + '"');
        Ranges.send(laid.tar(), request, response);
    }

    private static Frames frames(String word) {
        try {
            return Frames.of(word);
        } catch (IllegalArgumentException e) {
            throw Refusal.unfit(String.valueOf(e.getMessage()));
        }
    }
}
