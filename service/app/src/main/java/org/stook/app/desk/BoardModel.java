package org.stook.app.desk;

import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.stook.app.publish.Publications;
import org.stook.app.queue.Board;
import org.stook.app.queue.Line;
import org.stook.app.stack.Stacks;
import org.stook.orders.Workers;

/** Gathers what the queue page shows. */
@Component
class BoardModel {
    private static final int LATELY = 12;

    private final Board board;
    private final Stacks stacks;
    private final Publications publications;
    private final Workers workers;
    private final Line line;
    private final Words words;

    /** What waits, and how times are told. */
    @Component
    record Waiting(Line line, Words words) {}

    BoardModel(Board board, Stacks stacks, Publications publications, Workers workers, Waiting waiting) {
        this.board = board;
        this.line = waiting.line();
        this.words = waiting.words();
        this.stacks = stacks;
        this.publications = publications;
        this.workers = workers;
    }

    /** @param station only what waits there, empty: all. @param after where what waits goes on, empty: the front */
    void fill(Model model, String station, String after) {
        model.addAttribute("running", board.running());
        Line.Page page = line.page(station, after);
        model.addAttribute("waiting", page.runs());
        model.addAttribute("next", page.next());
        model.addAttribute("flow", line.flow(words.zoneId()));
        model.addAttribute("station", station);
        model.addAttribute("after", after);
        model.addAttribute("stuck", board.stuck());
        model.addAttribute("shares", board.shares());
        model.addAttribute("cut", board.cut());
        model.addAttribute("asking", stacks.asking());
        model.addAttribute("collecting", stacks.collecting());
        model.addAttribute("published", publications.latest(LATELY));
        model.addAttribute("workers", workers.present());
    }
}
