package org.stook.app.desk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.util.FileSystemUtils;
import org.stook.app.stack.Sealing;
import org.stook.app.testing.Caller;
import org.stook.app.testing.Everyone;
import org.stook.app.testing.Migrated;
import org.stook.app.testing.OneStation;

/** The whole service over a real port with an invented queue, one for all tests of it; its recurring work stands still. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"stook.recurring=false", "stook.zone=UTC"})
abstract class DeskStage {
    private static final Path FOLDER = folder();

    private static boolean filled;

    @Value("${local.server.port}")
    int port;

    @Autowired
    JdbcClient jdbc;

    private static Path folder() {
        try {
            Path folder = Files.createTempDirectory("stook-desk");
            Runtime.getRuntime().addShutdownHook(new Thread(() -> FileSystemUtils.deleteRecursively(folder.toFile())));
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @DynamicPropertySource
    static void studio(DynamicPropertyRegistry registry) {
        OneStation.register(registry, Migrated.database(DeskStage.class), FOLDER);
    }

    @BeforeAll
    static void fill(@Autowired JdbcClient jdbc, @Autowired Sealing sealing) throws IOException {
        if (filled) return;
        filled = true;
        Demo.fill(jdbc, sealing);
        Everyone.fill(jdbc);
        Path preview = FOLDER.resolve("published/agate/1.preview.jpg");
        Files.createDirectories(preview.getParent());
        Files.write(preview, new byte[] {1, 2, 3});
        Files.writeString(preview.resolveSibling("1.json"), """
                {"frames": [{"role": "stray", "reason": "7.tif: is black"}, {"role": "blended", "reason": ""}]}""");
    }

    Caller olga() {
        return new Caller(port, "olga");
    }

    HttpResponse<String> get(String path) {
        return olga().get(path);
    }

    HttpResponse<String> post(String path, String... headers) {
        var request = olga().request(path).POST(HttpRequest.BodyPublishers.noBody());
        if (headers.length > 0) {
            request.headers(headers);
        }
        return olga().send(request);
    }

    String post(String path, String json) {
        return olga().send(olga().request(path)
                        .POST(HttpRequest.BodyPublishers.ofString(json))
                        .header("Content-Type", "application/json"))
                .body();
    }

    HttpResponse<String> put(String path, String json) {
        return olga().send(olga().request(path)
                .PUT(HttpRequest.BodyPublishers.ofString(json))
                .header("Content-Type", "application/json"));
    }

    HttpResponse<String> form(String path, String fields) {
        return olga().send(olga().request(path)
                .POST(HttpRequest.BodyPublishers.ofString(fields))
                .header("Content-Type", "application/x-www-form-urlencoded"));
    }
}
