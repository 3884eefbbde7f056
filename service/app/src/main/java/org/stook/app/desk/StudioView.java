package org.stook.app.desk;

import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import org.stook.app.desk.live.Parts;
import org.stook.app.desk.live.Snapshot;
import org.stook.app.desk.live.View;
import org.stook.app.queue.Crew;
import org.stook.app.queue.ShareList;

/** What the work hangs on: workers and shares. */
@Component
class StudioView {
    private final Crew crew;
    private final ShareList shares;

    StudioView(Crew crew, ShareList shares) {
        this.crew = crew;
        this.shares = shares;
    }

    List<Crew.Member> workers() {
        return crew.all();
    }

    List<ShareList.Share> shares() {
        return shares.all();
    }

    /** The page of the workers, as it changes; when each was heard of goes by the clock. */
    record Workers(StudioView studio) implements View {
        @Override
        public Map<String, String> parts(Supplier<Snapshot> now, Parts parts) {
            List<Crew.Member> crew =
                    studio.workers().stream().map(Crew.Member::standing).toList();
            return Map.of("crew", parts.of("workers", "crew", Map.of("crew", crew)));
        }

        @Override
        public boolean goesByTheClock() {
            return true;
        }
    }

    /** Likewise that of the shares. */
    record Shares(StudioView studio) implements View {
        @Override
        public Map<String, String> parts(Supplier<Snapshot> now, Parts parts) {
            return Map.of("list", parts.of("shares", "list", Map.of("shares", studio.shares())));
        }
    }
}
