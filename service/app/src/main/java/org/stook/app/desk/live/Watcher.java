package org.stook.app.desk.live;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.atomic.AtomicBoolean;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** One open page, and what it was sent already. While a slow one takes its time, what it missed is not kept: it gets the newest next. */
final class Watcher {
    final View view;
    final SseEmitter page = new SseEmitter(0L);

    private final long since = System.nanoTime();
    private final Map<String, String> sent = new HashMap<>();
    private final AtomicBoolean busy = new AtomicBoolean();
    private volatile boolean gone;

    Watcher(View view) {
        this.view = view;
        page.onCompletion(() -> gone = true);
        page.onTimeout(() -> gone = true);
        page.onError(e -> gone = true);
    }

    boolean isGone() {
        return gone;
    }

    double ageSeconds() {
        return (System.nanoTime() - since) / 1e9;
    }

    /** Sends what differs, on a thread of its own: one page that reads slowly must not keep the others waiting. */
    void offer(Map<String, String> parts, Executor threads) {
        if (busy.compareAndSet(false, true)) {
            try {
                threads.execute(() -> send(parts));
            } catch (RejectedExecutionException e) {
                busy.set(false); // The next beat offers again.
            }
        }
    }

    private void send(Map<String, String> parts) {
        try {
            for (Map.Entry<String, String> part : parts.entrySet()) {
                if (!part.getValue().equals(sent.get(part.getKey()))) {
                    page.send(SseEmitter.event().name(part.getKey()).data(part.getValue()));
                    sent.put(part.getKey(), part.getValue());
                }
            }
        } catch (IOException | IllegalStateException e) {
            gone = true;
        } finally {
            busy.set(false);
        }
    }

    /** A line that says nothing; it fails if nobody is there any more. */
    void sign(Executor threads) {
        offer(Map.of("alive", Long.toString(System.nanoTime())), threads);
    }
}
