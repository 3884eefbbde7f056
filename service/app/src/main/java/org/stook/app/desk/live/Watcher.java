package org.stook.app.desk.live;

import java.io.IOException;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.web.servlet.mvc.method.annotation.ResponseBodyEmitter.DataWithMediaType;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** One open page, and what it was sent already. While a slow one takes its time, what it missed is not kept: it gets the newest next. */
final class Watcher {
    final View view;
    final SseEmitter page = new SseEmitter(0L);

    private final long since = System.nanoTime();
    /** Touched by whoever has set {@link #busy}. */
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

    /**
     * Sends what differs from what it was sent before, in one piece, on a thread of its own: one page that reads slowly must not
     * keep the others waiting.
     */
    void offer(Message progress, List<Message> parts, Executor threads) {
        if (!busy.compareAndSet(false, true)) return;
        // How far runs are comes first: the page lays it over the parts that follow.
        Set<DataWithMediaType> fresh = Stream.concat(Stream.of(progress), parts.stream())
                .filter(message -> !message.text().equals(sent.put(message.event(), message.text())))
                .map(message -> new DataWithMediaType(message.bytes(), null))
                .collect(Collectors.toCollection(LinkedHashSet::new));
        if (fresh.isEmpty()) {
            busy.set(false);
        } else {
            hand(fresh, threads);
        }
    }

    /** Fails if nobody is there any more. */
    void sign(Executor threads) {
        if (busy.compareAndSet(false, true)) {
            hand(Set.of(new DataWithMediaType(Message.sign().bytes(), null)), threads);
        }
    }

    private void hand(Set<DataWithMediaType> fresh, Executor threads) {
        try {
            threads.execute(() -> send(fresh));
        } catch (RejectedExecutionException e) {
            gone = true; // The service is about to end.
        }
    }

    private void send(Set<DataWithMediaType> fresh) {
        try {
            page.send(fresh);
        } catch (IOException | IllegalStateException e) {
            gone = true;
        } finally {
            busy.set(false);
        }
    }
}
