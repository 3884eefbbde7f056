package org.stook.app.testing;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;

/**
 * Calls a service on this host.
 *
 * @param name one of {@link Everyone}
 */
public record Caller(int port, String name) {
    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    public HttpRequest.Builder request(String path) {
        return Everyone.as(name, HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path)));
    }

    public HttpResponse<String> get(String path) {
        return send(request(path));
    }

    public HttpResponse<String> send(HttpRequest.Builder request) {
        return send(request, HttpResponse.BodyHandlers.ofString());
    }

    public <T> HttpResponse<T> send(HttpRequest.Builder request, HttpResponse.BodyHandler<T> as) {
        try {
            return CLIENT.send(request.build(), as);
        } catch (IOException e) {
            throw new AssertionError(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }
}
