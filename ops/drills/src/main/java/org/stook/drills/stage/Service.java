package org.stook.drills.stage;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The service as a process of its own, and one archivist who may sign in. */
public final class Service implements AutoCloseable {
    private static final String NAME = "drill-archivist";
    private static final String PASSWORD = "a drill, no secret";
    /** Of the password, at the least cost, for it is sent with every request. */
    private static final String HASH = "{bcrypt}$2a$04$V39jKyYfIe1t.iRDJUI2j.iuhub.tCZBS6BTmCZ7Mz/YFrk7Ij/1i";

    private static final Duration PATIENCE = Duration.ofSeconds(180);

    private final Stage stage;
    private final Path jar;
    private final int port;
    private final List<String> javaOptions;
    private final boolean recurring;
    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private Process process;

    /** @param recurring whether it does what it does by itself, such as making packages ready */
    public Service(Stage stage, int port, List<String> javaOptions, boolean recurring)
            throws IOException, InterruptedException {
        this.stage = stage;
        this.jar = Path.of(System.getProperty("stook.app.jar"));
        this.port = port;
        this.javaOptions = List.copyOf(javaOptions);
        this.recurring = recurring;
        admit();
        this.process = start();
        awaitAnswer();
    }

    private void admit() {
        stage.jdbc()
                .sql("select to_regclass('stook.person') is not null")
                .query(Boolean.class)
                .optional()
                .filter(there -> there)
                .ifPresent(there -> stage.jdbc()
                        .sql("insert into stook.person (name, roles, password) values (?, array['ARCHIVIST'], ?)")
                        .params(NAME, HASH)
                        .update());
    }

    private Process start() throws IOException {
        var source = stage.database().source();
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Djava.awt.headless=true"));
        command.addAll(javaOptions);
        command.addAll(List.of(
                "-jar",
                jar.toString(),
                "--server.port=" + port,
                "--stook.recurring=" + recurring,
                "--spring.datasource.url=" + source.getJdbcUrl(),
                "--spring.datasource.username=" + stage.database().username(),
                "--spring.datasource.password=" + stage.database().password(),
                "--stook.owner.username=" + source.getUsername(),
                "--stook.owner.password=" + source.getPassword()));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        stage.folder().resolve("service.log").toFile()))
                .start();
    }

    public void awaitAnswer() throws IOException, InterruptedException {
        long until = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < until) {
            try {
                var answer = client.send(
                        request("/api/archive/new?limit=1").build(),
                        java.net.http.HttpResponse.BodyHandlers.ofString());
                if (answer.statusCode() == 200) return;
                if (answer.statusCode() < 500)
                    throw new IllegalStateException("the service says " + answer.statusCode());
            } catch (IOException e) {
                // Not up yet.
            }
            TimeUnit.MILLISECONDS.sleep(300);
        }
        throw new IOException(
                "the service does not answer; see " + stage.folder().resolve("service.log"));
    }

    /** Ends it as a power cut would, and starts it again. */
    public void kill() throws IOException, InterruptedException {
        Processes.signal("KILL", process.pid());
        process.waitFor();
        process = start();
    }

    public long pid() {
        return process.pid();
    }

    public HttpClient client() {
        return client;
    }

    public HttpRequest.Builder request(String path) {
        String who = Base64.getEncoder().encodeToString((NAME + ":" + PASSWORD).getBytes(StandardCharsets.UTF_8));
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .timeout(Duration.ofMinutes(30))
                .header("Authorization", "Basic " + who);
    }

    @Override
    public void close() throws IOException {
        process.destroyForcibly();
    }
}
