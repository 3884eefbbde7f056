package org.stook.studioday;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stook.postgres.LocalPostgres;

/** The service under trial, a process of its own that can be killed and started again. */
final class Service implements AutoCloseable {
    private static final Duration START = Duration.ofSeconds(240);
    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(2)).build();
    private final List<String> command;
    private final Path log;
    private final int port;
    private @Nullable Process process;

    Service(Path jar, Path home, LocalPostgres postgres, List<String> more) throws IOException {
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
            if (status("/actuator/health") == 200) return;
            Thread.sleep(200);
        }
        throw new IOException("the service did not answer within " + START.toSeconds() + " s; see " + log);
    }

    /** As a power cut would. */
    void kill() throws InterruptedException {
        if (process != null) process.destroyForcibly().waitFor();
    }

    /** The HTTP status of a page, 0 if nobody answers. */
    int status(String path) throws InterruptedException {
        return send(
                HttpRequest.newBuilder(at(path)).timeout(Duration.ofSeconds(5)).build());
    }

    private int send(HttpRequest request) throws InterruptedException {
        try {
            return client.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
        } catch (IOException nobodyThere) {
            return 0;
        }
    }

    private URI at(String path) {
        return URI.create("http://127.0.0.1:" + port + path);
    }

    @Override
    public void close() throws InterruptedException {
        if (process != null) {
            process.destroy();
            process.waitFor();
        }
    }
}
