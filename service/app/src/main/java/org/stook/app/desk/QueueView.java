package org.stook.app.desk;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import org.stook.app.desk.live.Parts;
import org.stook.app.desk.live.Snapshot;
import org.stook.app.desk.live.View;
import org.stook.app.queue.Board;
import org.stook.app.queue.Line;
import org.stook.app.station.StationBook;

/** The queue page: what is the same for all, and the runs that were asked for. */
record QueueView(Source source, QueueForm form, String after) implements View {
    /** The parts of the page, and what each shows. */
    private static final Map<String, Set<String>> SHOWN = Map.of(
            "dials", Set.of("dials"),
            "person", Set.of("person"),
            "running", Set.of("running", "anyWorkers"),
            "arriving", Set.of("collecting"),
            "line", Set.of("form", "after", "runs", "anyWaiting", "more"),
            "published", Set.of("published"));

    /** Where what was asked for comes from; there is one. */
    @Component
    record Source(Line line, Words words, StationBook stations) {}

    @Override
    public Map<String, String> parts(Supplier<Snapshot> now, Parts parts) {
        Map<String, Object> all = variables(now.get());
        all.put("running", standing(now.get().running()));
        Map<String, String> made = new LinkedHashMap<>();
        SHOWN.forEach((section, names) -> {
            Map<String, Object> shows = new HashMap<>(all);
            shows.keySet().retainAll(names);
            made.put(section, parts.of("board", section, shows));
        });
        return made;
    }

    Map<String, Object> variables(Snapshot now) {
        Line.Page page = source.line().page(form.wanted(source.words().zoneId()), after);
        Map<String, Object> all = new HashMap<>();
        all.put("dials", now.dials());
        all.put("person", now.person());
        all.put("running", now.running());
        all.put("anyWorkers", !now.workers().isEmpty());
        all.put("collecting", now.collecting());
        all.put("published", now.published());
        all.put("form", form);
        all.put("after", after);
        all.put("runs", standing(page.runs()));
        all.put("anyWaiting", now.flow().waiting() > 0);
        all.put("more", page.next() == null ? "" : form.address("/", page.next()));
        all.put("stations", source.stations().all());
        return all;
    }

    private static List<Board.Run> standing(List<Board.Run> runs) {
        return runs.stream().map(Board.Run::standing).toList();
    }
}
