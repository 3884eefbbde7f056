package org.stook.drills.desk;

import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Flow;
import java.util.concurrent.atomic.LongAdder;
import org.stook.drills.stage.Service;

/** Many open queue pages: clients of the stream that keeps such a page up to date, which note when they hear of what. */
final class Dashboards implements AutoCloseable {
    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private final List<CompletableFuture<?>> open = new ArrayList<>();
    private final Map<String, List<Long>> heard = new ConcurrentHashMap<>();
    private final LongAdder characters = new LongAdder();
    private final Set<String> awaited = ConcurrentHashMap.newKeySet();

    Dashboards(Service service, int count) {
        for (int i = 0; i < count; i++) {
            Page page = new Page();
            open.add(client.sendAsync(
                    service.request("/events/queue")
                            .header("Accept", "text/event-stream")
                            .build(),
                    HttpResponse.BodyHandlers.fromLineSubscriber(page)));
        }
    }

    /** From now on the pages note when they first show this. */
    void await(String mark) {
        awaited.add(mark);
    }

    private static List<Long> none(String mark) {
        return Collections.synchronizedList(new ArrayList<>());
    }

    /** Nanotimes, one of each page that showed it. */
    List<Long> heard(String mark) {
        return List.copyOf(heard.getOrDefault(mark, List.of()));
    }

    long characters() {
        return characters.sum();
    }

    /** How many pages are still connected. */
    long connected() {
        return open.stream().filter(page -> !page.isDone()).count();
    }

    @Override
    public void close() {
        open.forEach(page -> page.cancel(true));
    }

    private final class Page implements Flow.Subscriber<String> {
        private final Set<String> shown = new HashSet<>();

        @Override
        public void onSubscribe(Flow.Subscription subscription) {
            subscription.request(Long.MAX_VALUE);
        }

        @Override
        public void onNext(String line) {
            characters.add(line.length());
            long now = System.nanoTime();
            for (String mark : awaited) {
                if (line.contains(mark) && shown.add(mark)) {
                    heard.computeIfAbsent(mark, Dashboards::none).add(now);
                }
            }
        }

        @Override
        public void onError(Throwable failure) {
            // Counted as not connected any more.
        }

        @Override
        public void onComplete() {
            // Likewise.
        }
    }
}
