package org.stook.app.desk;

import java.io.IOException;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import org.stook.app.queue.Board;

/** Tells open pages that something changed; they fetch it themselves. Asks the database once a second for all of them. */
@Component
class Pulse {
    private static final int ROUNDS_BETWEEN_SIGNS = 20;

    private final Board board;
    private final Set<SseEmitter> pages = ConcurrentHashMap.newKeySet();
    private String last = "";
    private int silent;

    Pulse(Board board) {
        this.board = board;
    }

    SseEmitter join() {
        SseEmitter page = new SseEmitter(0L);
        page.onCompletion(() -> pages.remove(page));
        page.onTimeout(() -> pages.remove(page));
        page.onError(e -> pages.remove(page));
        pages.add(page);
        return page;
    }

    @Scheduled(fixedDelay = 1000)
    void beat() {
        if (pages.isEmpty()) {
            return;
        }
        String now = board.fingerprint();
        if (!now.equals(last)) {
            last = now;
            tell("changed");
        } else if (++silent % ROUNDS_BETWEEN_SIGNS == 0) {
            tell("alive"); // Finds out who has gone.
        }
    }

    private void tell(String event) {
        for (SseEmitter page : pages) {
            try {
                page.send(SseEmitter.event().name(event).data(""));
            } catch (IOException | IllegalStateException e) {
                pages.remove(page);
            }
        }
    }
}
