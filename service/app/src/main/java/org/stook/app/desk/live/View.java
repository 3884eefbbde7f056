package org.stook.app.desk.live;

import java.util.Map;

/** What a page shows that changes by itself. Views that are equal are made once for all who look at them. */
public interface View {
    /** The parts by the names of their events, each as the page takes it. */
    Map<String, String> parts(Snapshot now, Parts parts);
}
