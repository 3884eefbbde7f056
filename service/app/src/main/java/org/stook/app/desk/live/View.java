package org.stook.app.desk.live;

import java.util.Map;
import java.util.function.Supplier;

/** What a page shows that changes by itself. Views that are equal are made once for all who look at them. */
public interface View {
    /**
     * The parts by the names of their events, each as the page takes it. How far runs are is not among them: every page is told
     * that apart, as figures, so that nothing is made anew for it.
     *
     * @param now taken when it is first asked for
     */
    Map<String, String> parts(Supplier<Snapshot> now, Parts parts);

    /** Whether a part goes by the clock, too, so that it has to be made anew within seconds though nothing happened. */
    default boolean goesByTheClock() {
        return false;
    }
}
