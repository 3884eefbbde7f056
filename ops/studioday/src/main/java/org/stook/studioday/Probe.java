package org.stook.studioday;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.CopyOnWriteArrayList;

/** Asks for pages all the while, as people do. */
final class Probe implements Runnable {
    private static final List<String> PAGES = List.of("/", "/stations/north", "/api/stacks?limit=20");
    private static final double LONGEST = 200;
    private final Service service;
    private final List<Double> millis = new CopyOnWriteArrayList<>();

    Probe(Service service) {
        this.service = service;
    }

    @Override
    public void run() {
        try {
            for (int i = 0; ; i++) {
                long start = System.nanoTime();
                int status = service.status(PAGES.get(i % PAGES.size()));
                if (status == 200) millis.add((System.nanoTime() - start) / 1e6);
                Thread.sleep(250);
            }
        } catch (InterruptedException over) {
            Thread.currentThread().interrupt();
        }
    }

    /** @param judged not where the service is killed meanwhile: its first answers are slow by nature */
    Line line(boolean judged) {
        double[] sorted =
                millis.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        if (sorted.length == 0) return new Line("pages answer", "never", "<= 200 ms", false);
        double median = sorted[sorted.length / 2];
        double late = sorted[(int) (0.95 * (sorted.length - 1))];
        String found = String.format(Locale.ROOT, "%.0f ms, 95 %% within %.0f ms", median, late);
        return new Line("pages answer", found, judged ? "95 % <= 200 ms" : "", !judged || late <= LONGEST);
    }
}
