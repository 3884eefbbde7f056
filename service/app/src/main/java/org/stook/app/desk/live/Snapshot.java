package org.stook.app.desk.live;

import java.util.List;
import org.stook.app.publish.Publications;
import org.stook.app.queue.Board;
import org.stook.app.queue.Line;
import org.stook.app.queue.Needs;
import org.stook.app.stack.Stacks;
import org.stook.orders.Workers;

/** The studio's work at one moment, the same for everybody who looks. */
public record Snapshot(
        List<Board.Run> running,
        Line.Flow flow,
        Person person,
        List<Stacks.Stack> collecting,
        List<Publications.Publication> published,
        List<Workers.Worker> workers) {
    /**
     * What needs a person.
     *
     * @param count all of it; the lists show the first of each kind
     */
    public record Person(
            Needs.Count count,
            List<Board.Trouble> shares,
            List<Board.Run> stuck,
            List<Needs.SentBack> sentBack,
            List<Stacks.Stack> asking,
            List<Board.Cut> cut) {
        public int shown() {
            return shares.size() + stuck.size() + sentBack.size() + asking.size() + cut.size();
        }
    }

    /** What stands at the top of the queue page. */
    public record Dials(Line.Flow flow, Needs.Count needs, int arriving, int running, int workers, long resting) {}

    public Dials dials() {
        return new Dials(flow, person.count(), collecting.size(), running.size(), workers.size(), resting());
    }

    /** Workers that take nothing for now. */
    private long resting() {
        return workers.stream().filter(w -> w.state() != Workers.State.ACTIVE).count();
    }
}
