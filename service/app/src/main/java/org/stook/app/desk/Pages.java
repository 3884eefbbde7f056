package org.stook.app.desk;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
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
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import org.stook.app.audit.AuditTrail;
import org.stook.app.publish.Publications;
import org.stook.app.queue.Board;
import org.stook.app.stack.Stacks;

/** The queue and the page of a stack. */
@Controller
class Pages {
    private static final int ENTRIES = 200;

    private final BoardModel boardModel;
    private final Stacks stacks;
    private final Board board;
    private final Publications publications;
    private final AuditTrail audit;
    private final Words words;
    private final Pulse pulse;

    Pages(
            BoardModel boardModel,
            Stacks stacks,
            Board board,
            Publications publications,
            AuditTrail audit,
            Words words,
            Pulse pulse) {
        this.boardModel = boardModel;
        this.stacks = stacks;
        this.board = board;
        this.publications = publications;
        this.audit = audit;
        this.words = words;
        this.pulse = pulse;
    }

    @GetMapping("/")
    String queue(Model model) {
        boardModel.fill(model);
        return "queue";
    }

    /** What changes on the queue page; it is fetched anew when {@code /events} says so. */
    @GetMapping("/board")
    String board(Model model) {
        boardModel.fill(model);
        return "board";
    }

    @GetMapping(path = "/events", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter events() {
        return pulse.join();
    }

    @GetMapping("/stacks/{id}")
    String stack(@PathVariable long id, Model model) {
        Stacks.Stack stack = stacks.find(id).orElseThrow(() -> Refusal.notFound("There is no stack " + id + "."));
        List<Board.Run> runs = board.ofStack(id);
        List<String> subjects = new ArrayList<>(Stream.concat(
                        Stream.of("stack/" + id), runs.stream().map(r -> "run/" + r.id()))
                .toList());
        model.addAttribute("stack", stack);
        model.addAttribute("items", stacks.items(id));
        model.addAttribute("runs", runs);
        List<Publications.Publication> published = publications.ofStack(id);
        model.addAttribute("publications", published);
        model.addAttribute(
                "notes",
                published.stream()
                        .map(Publications.Publication::runId)
                        .collect(Collectors.toMap(Function.identity(), publications::notes)));
        model.addAttribute("trail", audit.about(subjects, ENTRIES));
        model.addAttribute("words", words);
        return "stack";
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
