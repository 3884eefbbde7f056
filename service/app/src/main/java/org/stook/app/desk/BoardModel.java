package org.stook.app.desk;

import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.stook.app.publish.Publications;
import org.stook.app.queue.Board;
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

    BoardModel(Board board, Stacks stacks, Publications publications, Workers workers) {
        this.board = board;
        this.stacks = stacks;
        this.publications = publications;
        this.workers = workers;
    }

    void fill(Model model) {
        model.addAttribute("running", board.running());
        model.addAttribute("waiting", board.waiting());
        model.addAttribute("stuck", board.stuck());
        model.addAttribute("shares", board.shares());
        model.addAttribute("cut", board.cut());
        model.addAttribute("asking", stacks.asking());
        model.addAttribute("collecting", stacks.collecting());
        model.addAttribute("published", publications.latest(LATELY));
        model.addAttribute("workers", workers.present());
    }
}
