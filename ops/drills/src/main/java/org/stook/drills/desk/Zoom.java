package org.stook.drills.desk;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Semaphore;
import org.stook.drills.stage.Service;
import org.stook.orders.RunId;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Looks at a composite as a browser's window does: over six connections, as browsers hold them to one host (common practice).
 *
 * @param edge of a tile
 */
record Zoom(Service service, RunId run, int width, int height, int edge, HttpClient client) {
    private static final int CONNECTIONS = 6;
    private static final int WINDOW_WIDTH = 1280;
    private static final int WINDOW_HEIGHT = 1000;

    /** Milliseconds from the first question. */
    record Times(double first, double all) {}

    static Zoom of(Service service, RunId run) throws IOException, InterruptedException {
        HttpClient client =
                HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
        JsonNode info = JsonMapper.builder()
                .build()
                .readTree(client.send(
                                service.request("/iiif/images/" + run + "/info.json")
                                        .build(),
                                HttpResponse.BodyHandlers.ofString())
                        .body());
        return new Zoom(
                service,
                run,
                info.get("width").asInt(),
                info.get("height").asInt(),
                info.get("tiles").get(0).get("width").asInt(),
                client);
    }

    /** @param across where the window lies, 0 to 1, likewise down */
    Times window(double across, double down) throws InterruptedException {
        int left = (int) (across * Math.max(0, width - WINDOW_WIDTH));
        int top = (int) (down * Math.max(0, height - WINDOW_HEIGHT));
        List<CompletableFuture<Double>> tiles = new ArrayList<>();
        Semaphore free = new Semaphore(CONNECTIONS);
        long began = System.nanoTime();
        for (int y = top / edge * edge; y < Math.min(height, top + WINDOW_HEIGHT); y += edge) {
            for (int x = left / edge * edge; x < Math.min(width, left + WINDOW_WIDTH); x += edge) {
                free.acquire();
                tiles.add(tile(x, y)
                        .thenApply(done -> (System.nanoTime() - began) / 1e6)
                        .whenComplete((millis, failure) -> free.release()));
            }
        }
        List<Double> millis = tiles.stream().map(CompletableFuture::join).toList();
        return new Times(Collections.min(millis), Collections.max(millis));
    }

    private CompletableFuture<HttpResponse<byte[]>> tile(int x, int y) {
        int wide = Math.min(edge, width - x);
        int high = Math.min(edge, height - y);
        String address = "/runs/%s/tiles/%d,%d,%d,%d/%d,%d/0/default.jpg".formatted(run, x, y, wide, high, wide, high);
        return client.sendAsync(service.request(address).build(), HttpResponse.BodyHandlers.ofByteArray())
                .thenApply(answer -> {
                    if (answer.statusCode() != 200) {
                        throw new IllegalStateException(address + ": " + answer.statusCode());
                    }
                    return answer;
                });
    }
}
