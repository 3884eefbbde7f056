package org.stook.drills.fault;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;

/**
 * A worker at work. Faults prefer one, for breaking what rests proves little; and they spare a run that has died twice
 * already: the third death rightly puts it in quarantine, where it waits for a person.
 */
record Busy(Slot slot, long run, int attempt) {
    private record Holder(String worker, long run, int attempt) {}

    static Optional<Busy> any(Stage stage, Random random, String spared) {
        List<Holder> holders = stage.jdbc()
                .sql("""
                        select worker_id, id, attempt from stook.run r
                        where state in ('RUNNING', 'PUBLISHING') and deaths < 2 and (select count(*) from drill.fault f
                          where f.run_id = r.id) < 2 order by id""")
                .query((row, n) -> new Holder(row.getString(1), row.getLong(2), row.getInt(3)))
                .list();
        List<Busy> busy = holders.stream()
                .flatMap(h -> stage.slots().stream()
                        .filter(s -> s.pid() > 0
                                && !s.name().equals(spared)
                                && s.name().equals(h.worker()))
                        .map(s -> new Busy(s, h.run(), h.attempt())))
                .toList();
        return busy.isEmpty() ? Optional.empty() : Optional.of(busy.get(random.nextInt(busy.size())));
    }
}
