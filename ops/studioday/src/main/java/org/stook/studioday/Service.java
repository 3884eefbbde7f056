package org.stook.studioday;

import java.io.IOException;
import java.io.InputStream;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stook.postgres.LocalPostgres;

/** The service under trial, a process of its own that can be killed and started again. */
final class Service implements AutoCloseable {
    private static final Duration START = Duration.ofSeconds(240);
    /** The person who gives the day's orders, and the bcrypt hash of that password at the lowest cost. */
    private static final String PERSON = "dora";

    private static final String PASSWORD = "a day in the studio";
    private static final String HASH = "{bcrypt}$2a$04$Iw9kpzokSUHnwct3LxUMPekHrD4KpUf2sWb6LpRuS2Tvk1fzb0v.m";
    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(2)).build();
    private final List<String> command;
    private final Path log;
    private final int port;
    private final LocalPostgres postgres;
    private @Nullable Process process;

    Service(Path jar, Path home, LocalPostgres postgres, List<String> more) throws IOException {
        this.postgres = postgres;
        log = home.resolve("service.log");
        try (ServerSocket free = new ServerSocket(0)) {
            port = free.getLocalPort();
        }
        command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx768m",
                "-jar",
                jar.toString(),
                "--server.port=" + port,
                "--spring.datasource.url=" + postgres.url("stook"),
                "--spring.datasource.username=" + postgres.username(),
                "--spring.datasource.password=" + postgres.password(),
                "--stook.setup-file=" + home.resolve("setup-code"),
                "--logging.level.root=WARN"));
        command.addAll(more);
    }

    /** Does not wait until it answers. */
    void launch() throws IOException {
        process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
                .start();
    }

    void start() throws IOException, InterruptedException {
        launch();
        long until = System.nanoTime() + START.toNanos();
        while (System.nanoTime() < until) {
            if (process == null || !process.isAlive())
                throw new IOException("the service ended at its start; see " + log);
            if (healthy()) {
                letIn();
                return;
            }
            Thread.sleep(200);
        }
        throw new IOException("the service did not answer within " + START.toSeconds() + " s; see " + log);
    }

    /** Asked without a name: at the first start nobody is known yet. */
    private boolean healthy() throws InterruptedException {
        URI health = URI.create("http://127.0.0.1:" + port + "/actuator/health");
        return send(HttpRequest.newBuilder(health)
                        .timeout(Duration.ofSeconds(5))
                        .build())
                == 200;
    }

    private void letIn() throws IOException {
        try (Connection connection =
                        DriverManager.getConnection(postgres.url("stook"), postgres.username(), postgres.password());
                PreparedStatement add = connection.prepareStatement("insert into stook.person (name, roles, password)"
                        + " values (?, array['ADMINISTRATOR'], ?) on conflict (lower(name)) do nothing")) {
            add.setString(1, PERSON);
            add.setString(2, HASH);
            add.executeUpdate();
        } catch (SQLException e) {
            throw new IOException("nobody could be let in: " + e.getMessage(), e);
        }
    }

    /** As a power cut would. */
    void kill() throws InterruptedException {
        if (process != null) process.destroyForcibly().waitFor();
    }

    /** The HTTP status of a page, 0 if nobody answers. */
    int status(String path) throws InterruptedException {
        return send(request(path).timeout(Duration.ofSeconds(5)).build());
    }

    /** What a page says, empty if nobody answers. */
    String text(String path) throws InterruptedException {
        HttpRequest request = request(path).timeout(Duration.ofSeconds(5)).build();
        try {
            return client.send(request, HttpResponse.BodyHandlers.ofString()).body();
        } catch (IOException nobodyThere) {
            return "";
        }
    }

    /** What it sends, byte by byte. */
    InputStream stream(String path) throws IOException, InterruptedException {
        HttpResponse<InputStream> answer =
                client.send(request(path).build(), HttpResponse.BodyHandlers.ofInputStream());
        if (answer.statusCode() != 200) throw new IOException(path + " was answered with " + answer.statusCode());
        return answer.body();
    }

    private int send(HttpRequest request) throws InterruptedException {
        try {
            return client.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
        } catch (IOException nobodyThere) {
            return 0;
        }
    }

    private HttpRequest.Builder request(String path) {
        String pair = PERSON + ":" + PASSWORD;
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .header(
                        "Authorization",
                        "Basic " + Base64.getEncoder().encodeToString(pair.getBytes(StandardCharsets.UTF_8)));
    }

    @Override
    public void close() throws InterruptedException {
        if (process != null) {
            process.destroy();
            process.waitFor();
        }
    }
}
