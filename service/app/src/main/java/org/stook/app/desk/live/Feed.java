package org.stook.app.desk.live;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.SmartLifecycle;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/**
 * Keeps all open pages up to date. Four times a second it asks the database two cheap questions for all of them together. Only
 * if something other than the progress of runs has changed it takes one snapshot, makes each view once, and sends each page the
 * parts that differ; progress goes as a few figures, the same bytes for every page.
 */
@Component
public class Feed implements SmartLifecycle {
    private static final Logger LOG = LoggerFactory.getLogger(Feed.class);
    private static final int BEAT_MILLIS = 250;
    /** Figures that change all the time are gathered over so many beats. */
    private static final int BEATS_OF_PROGRESS = 3;

    private static final int BEATS_BETWEEN_SIGNS = 60;
    /** What goes by the clock, such as a forecast, is made anew this often though nothing happened. */
    private static final int BEATS_BETWEEN_LOOKS = 120;
    /** Likewise of pages that tell seconds. */
    private static final int BEATS_OF_THE_CLOCK = 8;
    /** Then the page comes again by itself, and is asked who it is. */
    private static final double LONGEST_SECONDS = 300;

    /** Threads that send. The rest waits its turn, for a page takes a fraction of a millisecond unless its line is stuck. */
    private static final int MOST_AT_ONCE = 16;

    private final Snapshots snapshots;
    private final Parts parts;
    private final Set<Watcher> watchers = ConcurrentHashMap.newKeySet();
    private volatile ThreadPoolExecutor threads = pool();
    private Map<View, List<Message>> made = new HashMap<>();
    private Message progress = Message.of("progress", "");
    private String fingerprint = "";
    private long beats;
    private boolean unreachable;
    private volatile boolean running;

    Feed(Snapshots snapshots, Parts parts) {
        this.snapshots = snapshots;
        this.parts = parts;
    }

    private static ThreadPoolExecutor pool() {
        ThreadPoolExecutor threads =
                new ThreadPoolExecutor(MOST_AT_ONCE, MOST_AT_ONCE, 1, TimeUnit.MINUTES, new LinkedBlockingQueue<>());
        threads.allowCoreThreadTimeOut(true);
        return threads;
    }

    /** The stream of a page; it begins with all parts as they are. */
    public SseEmitter join(View view) {
        Watcher watcher = new Watcher(view);
        watchers.add(watcher);
        return watcher.page;
    }

    @Scheduled(fixedDelay = BEAT_MILLIS)
    synchronized void beat() {
        watchers.removeIf(Watcher::isGone);
        if (watchers.isEmpty() || !running) {
            made = new HashMap<>();
            return;
        }
        beats++;
        try {
            make();
            unreachable = false;
        } catch (DataAccessException e) {
            // Pages keep what they show; the next beat may find the database back.
            if (!unreachable) LOG.warn("open pages stand still until the database answers: {}", e.toString());
            unreachable = true;
        }
        for (Watcher watcher : watchers) {
            watcher.offer(progress, made.getOrDefault(watcher.view, List.of()), threads);
            if (beats % BEATS_BETWEEN_SIGNS == 0) watcher.sign(threads);
            if (watcher.ageSeconds() > LONGEST_SECONDS) watcher.page.complete();
        }
    }

    private void make() {
        String now = snapshots.fingerprint();
        boolean other = !now.equals(fingerprint) || beats % BEATS_BETWEEN_LOOKS == 0;
        boolean tick = beats % BEATS_OF_THE_CLOCK == 0;
        Snapshots.Once snapshot = new Snapshots.Once(snapshots);
        Map<View, List<Message>> fresh = new HashMap<>();
        for (Watcher watcher : watchers) {
            View view = watcher.view;
            List<Message> known = made.get(view);
            if (known == null || other || (tick && view.goesByTheClock())) {
                fresh.computeIfAbsent(view, v -> messages(v.parts(snapshot, parts)));
            } else {
                fresh.put(view, known);
            }
        }
        made = fresh;
        fingerprint = now;
        if (beats % BEATS_OF_PROGRESS == 0) progress = Message.of("progress", snapshots.progress());
    }

    private static List<Message> messages(Map<String, String> parts) {
        return parts.entrySet().stream()
                .map(part -> Message.of(part.getKey(), part.getValue()))
                .toList();
    }

    /** Also after {@link #stop}: a context may rest and go on. */
    @Override
    public void start() {
        if (threads.isShutdown()) threads = pool();
        running = true;
    }

    /** Before the web server waits for its requests to end: these never would by themselves. */
    @Override
    public void stop() {
        running = false;
        watchers.forEach(watcher -> watcher.page.complete());
        threads.shutdown();
    }

    @Override
    public boolean isRunning() {
        return running;
    }
}
