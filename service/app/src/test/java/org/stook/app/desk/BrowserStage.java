package org.stook.app.desk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.util.FileSystemUtils;
import org.stook.app.stack.Sealing;
import org.stook.app.testing.Chromium;
import org.stook.app.testing.OneStation;
import org.stook.postgres.testing.TestDatabase;

/**
 * The whole service with an invented queue and a composite to review, and one browser that looks at it, for all tests that
 * use a browser. Each of them finds what the others did, so none relies on being the first.
 */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"stook.recurring=false", "stook.zone=UTC"})
abstract class BrowserStage {
    private static final Path FOLDER = folder();

    private static boolean filled;

    @SuppressWarnings("NullAway.Init") // Opened before the first test.
    static ChromeDriver browser;

    @Value("${local.server.port}")
    int port;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Sealing sealing;

    private static Path folder() {
        try {
            return Files.createTempDirectory("stook-browser");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @DynamicPropertySource
    static void studio(DynamicPropertyRegistry registry) {
        OneStation.register(registry, TestDatabase.fresh(BrowserStage.class), FOLDER);
    }

    @BeforeAll
    static void open(@Autowired JdbcClient jdbc, @Autowired Sealing sealing) throws IOException {
        if (filled) return;
        filled = true;
        Reviewable.fill(jdbc, sealing, FOLDER);
        browser = Chromium.open(1280);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            browser.quit();
            FileSystemUtils.deleteRecursively(FOLDER.toFile());
        }));
    }

    /** The service rests while other classes have theirs: no page may be left open that would complain of it. */
    @AfterAll
    static void leave() {
        // Cookies can be deleted only while a page of theirs is open.
        browser.manage().deleteAllCookies();
        browser.get("about:blank");
    }

    String at(String path) {
        return "http://127.0.0.1:" + port + path;
    }

    /** A screenshot under {@code target/screenshots}. */
    static void keep(String name) throws IOException {
        Path shot = Path.of("target/screenshots", name.replaceAll("[^A-Za-z0-9]+", "-") + ".png");
        Files.createDirectories(shot.getParent());
        Files.write(shot, browser.getScreenshotAs(OutputType.BYTES));
    }
}
