package org.stook.app.desk;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import org.stook.app.desk.live.Parts;
import org.stook.app.desk.live.Snapshot;
import org.stook.app.desk.live.View;
import org.stook.app.queue.Line;
import org.stook.app.station.StationBook;

/** The queue page: what is the same for all, and the runs that were asked for. */
record QueueView(Source source, QueueForm form, String after) implements View {
    static final List<String> SECTIONS = List.of("dials", "person", "running", "arriving", "line", "published");

    /** Where what was asked for comes from; there is one. */
    @Component
    record Source(Line line, Words words, StationBook stations) {}

    @Override
    public Map<String, String> parts(Snapshot now, Parts parts) {
        return parts.of("board", SECTIONS, variables(now));
    }

    Map<String, Object> variables(Snapshot now) {
        Line.Page page = source.line().page(form.wanted(source.words().zoneId()), after);
        Map<String, Object> all = new HashMap<>();
        all.put("now", now);
        all.put("form", form);
        all.put("after", after);
        all.put("runs", page.runs());
        all.put("more", page.next() == null ? "" : form.address("/", page.next()));
        all.put("stations", source.stations().all());
        return all;
    }
}
