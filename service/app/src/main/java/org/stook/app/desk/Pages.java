package org.stook.app.desk;

import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** The queue. */
@Controller
class Pages {
    private final BoardModel boardModel;
    private final Pulse pulse;

    Pages(BoardModel boardModel, Pulse pulse) {
        this.boardModel = boardModel;
        this.pulse = pulse;
    }

    @GetMapping("/")
    String queue(
            @RequestParam(defaultValue = "") String station,
            @RequestParam(defaultValue = "") String after,
            Model model) {
        boardModel.fill(model, station, after);
        return "queue";
    }

    /** What changes on the queue page; it is fetched anew when {@code /events} says so. */
    @GetMapping("/board")
    String board(
            @RequestParam(defaultValue = "") String station,
            @RequestParam(defaultValue = "") String after,
            Model model) {
        boardModel.fill(model, station, after);
        return "board";
    }

    @GetMapping(path = "/events", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter events() {
        return pulse.join();
    }
}
