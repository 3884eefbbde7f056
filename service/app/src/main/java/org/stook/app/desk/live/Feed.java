package org.stook.app.desk.live;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.SynchronousQueue;
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
 * Keeps all open pages up to date. Five times in two seconds it asks the database one cheap question for all of them together; only if
 * the answer is another one it takes one snapshot, makes each view once, and sends each page the parts that differ.
 */
@Component
public class Feed implements SmartLifecycle {
    private static final Logger LOG = LoggerFactory.getLogger(Feed.class);
    private static final int BEAT_MILLIS = 400;
    private static final int BEATS_BETWEEN_SIGNS = 37;
    /** What goes by the clock, such as a forecast, is made anew this often though nothing happened. */
    private static final int BEATS_BETWEEN_LOOKS = 75;
    /** Then the page comes again by itself, and is asked who it is. */
    private static final double LONGEST_SECONDS = 300;

    private static final int MOST_AT_ONCE = 32;

    private final Snapshots snapshots;
    private final Parts parts;
    private final Set<Watcher> watchers = ConcurrentHashMap.newKeySet();
    private final ExecutorService threads =
            new ThreadPoolExecutor(0, MOST_AT_ONCE, 10, TimeUnit.SECONDS, new SynchronousQueue<>());
    private Map<View, Map<String, String>> made = new HashMap<>();
    private String fingerprint = "";
    private long beats;
    private boolean unreachable;
    private volatile boolean running;

    Feed(Snapshots snapshots, Parts parts) {
        this.snapshots = snapshots;
        this.parts = parts;
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
            watcher.offer(made.getOrDefault(watcher.view, Map.of()), threads);
            if (beats % BEATS_BETWEEN_SIGNS == 0) watcher.sign(threads);
            if (watcher.ageSeconds() > LONGEST_SECONDS) watcher.page.complete();
        }
    }

    private void make() {
        String now = snapshots.fingerprint();
        boolean other = !now.equals(fingerprint) || beats % BEATS_BETWEEN_LOOKS == 0;
        Map<View, Map<String, String>> fresh = other ? new HashMap<>() : made;
        Snapshot snapshot = null;
        for (Watcher watcher : watchers) {
            if (!fresh.containsKey(watcher.view)) {
                snapshot = snapshot == null ? snapshots.take() : snapshot;
                fresh.put(watcher.view, watcher.view.parts(snapshot, parts));
            }
        }
        made = fresh;
        fingerprint = now;
    }

    @Override
    public void start() {
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
