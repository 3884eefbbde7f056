package org.stook.app.signin;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Keeps cookies and the last page's token, as a person's browser does. */
final class Browser {
    private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

    private final HttpClient client =
            HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
    private final String base;
    private String token = "";

    Browser(int port) {
        this.base = "http://127.0.0.1:" + port;
    }

    HttpResponse<String> get(String path, String... headers) {
        return send(request(path, headers).build());
    }

    /** @param fields name, value, name, value */
    HttpResponse<String> post(String path, String... fields) {
        return postWith(token, path, fields);
    }

    HttpResponse<String> postWith(String csrf, String path, String... fields) {
        StringBuilder body = new StringBuilder("_csrf=" + encoded(csrf));
        for (int i = 0; i < fields.length; i += 2) {
            body.append('&').append(encoded(fields[i])).append('=').append(encoded(fields[i + 1]));
        }
        return send(request(path, "Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(body.toString()))
                .build());
    }

    HttpResponse<String> signIn(String name, String password) {
        get("/sign-in");
        return post("/sign-in", "name", name, "password", password);
    }

    private HttpRequest.Builder request(String path, String... headers) {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(base + path)).header("Accept", "text/html");
        for (int i = 0; i < headers.length; i += 2) request.setHeader(headers[i], headers[i + 1]);
        return request;
    }

    private HttpResponse<String> send(HttpRequest request) {
        try {
            HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
            Matcher matcher = TOKEN.matcher(answer.body());
            if (matcher.find()) token = matcher.group(1);
            return answer;
        } catch (IOException e) {
            throw new AssertionError(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    static String where(HttpResponse<?> answer) {
        return answer.headers()
                .firstValue("Location")
                .map(to -> to.replaceFirst("^https?://[^/]+", ""))
                .orElse("nowhere, status " + answer.statusCode());
    }

    private static String encoded(String value) {
        return URLEncoder.encode(value, StandardCharsets.UTF_8);
    }
}
