package org.stook.app.desk.live;

import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.stook.app.desk.Words;
import org.stook.app.publish.Publications;
import org.stook.app.queue.Board;
import org.stook.app.queue.Line;
import org.stook.app.queue.Needs;
import org.stook.app.stack.Stacks;
import org.stook.orders.Workers;

/** Gathers what the queue page shows. */
@Component
public class Snapshots {
    private static final int LATELY = 12;
    private static final int MOST_ASKING = 50;

    /** The queue's side of it. */
    @Component
    record Work(Board board, Line line, Needs needs, Workers workers) {}

    private final Work work;
    private final Stacks stacks;
    private final Publications publications;
    private final Words words;

    Snapshots(Work work, Stacks stacks, Publications publications, Words words) {
        this.work = work;
        this.stacks = stacks;
        this.publications = publications;
        this.words = words;
    }

    /** Differs whenever a snapshot would, but for how far runs are. */
    public String fingerprint() {
        return work.board().fingerprint();
    }

    /** How far runs are: a line each of run, per cent and step. */
    public String progress() {
        return work.board().progress().stream()
                .map(p -> p.run() + " " + words.percent(p.fraction()) + " " + Words.step(p.stage()))
                .collect(Collectors.joining("\n"));
    }

    /** A snapshot that is taken when the first asks for it, and is the same for all. */
    static final class Once implements Supplier<Snapshot> {
        private final Snapshots snapshots;
        private @Nullable Snapshot taken;

        Once(Snapshots snapshots) {
            this.snapshots = snapshots;
        }

        @Override
        public Snapshot get() {
            if (taken == null) taken = snapshots.take();
            return taken;
        }
    }

    public Snapshot take() {
        return new Snapshot(
                work.board().running(),
                work.line().flow(words.zoneId()),
                person(),
                stacks.collecting(),
                publications.latest(LATELY),
                work.workers().present());
    }

    private Snapshot.Person person() {
        return new Snapshot.Person(
                work.needs().count(),
                work.board().shares(),
                work.board().stuck(),
                work.needs().sentBack(),
                stacks.asking().stream().limit(MOST_ASKING).toList(),
                work.board().cut());
    }
}
