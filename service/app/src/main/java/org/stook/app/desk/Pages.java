package org.stook.app.desk;

import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import org.stook.app.desk.live.Feed;
import org.stook.app.desk.live.Snapshots;

/** The queue, and the streams that keep open pages up to date. */
@Controller
class Pages {
    private final Snapshots snapshots;
    private final Feed feed;
    private final QueueView.Source queue;
    private final StackView stacks;

    Pages(Snapshots snapshots, Feed feed, QueueView.Source queue, StackView stacks) {
        this.snapshots = snapshots;
        this.feed = feed;
        this.queue = queue;
        this.stacks = stacks;
    }

    @GetMapping("/")
    String queue(@ModelAttribute("form") QueueForm form, @RequestParam(defaultValue = "") String after, Model model) {
        QueueForm fit = form;
        try {
            form.wanted(queue.words().zoneId());
        } catch (Refusal refusal) {
            model.addAttribute("refused", refusal.getReason());
            fit = new QueueForm(null, null, null, null, null, null, null, null);
        }
        model.addAllAttributes(new QueueView(queue, fit, after).variables(snapshots.take()));
        model.addAttribute("form", form);
        model.addAttribute("stream", fit.address("/events/queue", after));
        return "queue";
    }

    /** The parts of the queue page, each as soon as it differs. */
    @GetMapping(path = "/events/queue", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter queueEvents(@ModelAttribute("form") QueueForm form, @RequestParam(defaultValue = "") String after) {
        form.wanted(queue.words().zoneId());
        return feed.join(new QueueView(queue, form, after));
    }

    /** Likewise of the page of a stack. */
    @GetMapping(path = "/events/stacks/{id}", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter stackEvents(@PathVariable long id) {
        stacks.of(id);
        return feed.join(new StackView.Live(stacks, id));
    }
}
