package org.stook.app.desk;

import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import org.stook.app.desk.live.Feed;

/** Workers and shares. */
@Controller
class StudioPages {
    private final StudioView studio;
    private final Feed feed;

    StudioPages(StudioView studio, Feed feed) {
        this.studio = studio;
        this.feed = feed;
    }

    @GetMapping("/workers")
    String workers(Model model) {
        model.addAttribute("crew", studio.workers());
        return "workers";
    }

    @GetMapping(path = "/events/workers", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter workerEvents() {
        return feed.join(new StudioView.Workers(studio));
    }

    @GetMapping("/shares")
    String shares(Model model) {
        model.addAttribute("shares", studio.shares());
        return "shares";
    }

    @GetMapping(path = "/events/shares", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter shareEvents() {
        return feed.join(new StudioView.Shares(studio));
    }
}
