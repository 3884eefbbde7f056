package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.stook.app.stack.Sealing;
import org.stook.app.testing.Chromium;
import org.stook.app.testing.OneStation;
import org.stook.postgres.testing.TestDatabase;

/** Every page in a real browser: accessible by axe-core's rules, quiet on the console, at home on this host, on a tablet too. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"stook.recurring=false", "stook.zone=UTC"})
class PagesInBrowserTest {
    private static final List<String> PAGES = List.of(
            "/",
            "/archive",
            "/keeping",
            "/people",
            "/workers",
            "/shares",
            "/tones",
            "/tones/compare?left=TONES&right=TONES",
            "/tones/TONES",
            "/search",
            "/search?text=wheel",
            "/search?text=0.tif",
            "/?state=any&text=e&person=true",
            "/stations/north",
            "/stations/north/settings",
            "/stacks/1",
            "/stacks/3",
            "/stacks/4",
            "/nowhere");
    private static final int WIDE = 1280;
    private static final int TABLET = 820;

    @TempDir
    static Path folder;

    private static ChromeDriver browser;
    private static String axe;

    @Value("${local.server.port}")
    private int port;

    @Autowired
    private JdbcClient jdbc;

    @DynamicPropertySource
    static void studio(DynamicPropertyRegistry registry) {
        OneStation.register(registry, TestDatabase.fresh(PagesInBrowserTest.class), folder);
    }

    @BeforeAll
    static void open(@Autowired JdbcClient jdbc, @Autowired Sealing sealing) throws IOException {
        Reviewable.fill(jdbc, sealing, folder);
        try (InputStream script = Objects.requireNonNull(PagesInBrowserTest.class.getResourceAsStream("/axe.min.js"))) {
            axe = new String(script.readAllBytes(), StandardCharsets.UTF_8);
        }
        browser = Chromium.open(1280);
    }

    @AfterAll
    static void close() {
        if (browser != null) browser.quit();
    }

    @Test
    void noPageHasAnAccessibilityFaultAComplaintOrAnAddressElsewhere() throws IOException {
        String tones = jdbc.sql("select min(id) from stook.tone_settings")
                .query(String.class)
                .single();
        browser.get(at("/sign-in"));
        checked("/sign-in");
        Chromium.open(browser, "ada", at("/"));
        for (String named : PAGES) {
            String page = named.replace("TONES", tones);
            width(WIDE);
            browser.get(at(page));
            checked(WIDE + page);
            width(TABLET);
            assertThat((Long) browser.executeScript("return document.documentElement.scrollWidth - innerWidth"))
                    .as("%s is wider than %d", page, TABLET)
                    .isNotPositive();
            keep(TABLET + page);
        }
        assertThat(Chromium.complaints(browser))
                .filteredOn(line -> !line.contains("/nowhere"))
                .isEmpty();
        assertThat(Chromium.requests(browser))
                .isNotEmpty()
                .allMatch(url -> url.startsWith(at("/")) || url.startsWith("data:") || url.startsWith("blob:"));
    }

    @Test
    void theQueueMovesByItselfAndAnOrderIsGivenByHand() {
        Chromium.open(browser, "ada", at("/"));
        assertThat(browser.findElement(By.id("board")).getText()).contains("42 %");
        jdbc.sql("update stook.run set stage = 'blend', fraction = 0.77 where id = 3")
                .update();
        new WebDriverWait(browser, Duration.ofSeconds(12))
                .until(page -> page.findElement(By.id("board")).getText().contains("77 %"));
        assertThat(browser.findElement(By.cssSelector("[data-run='3'] .now")).getText())
                .contains("blend");
        browser.findElement(By.cssSelector("form[action='/runs/2/hold'] button"))
                .click();
        new WebDriverWait(browser, Duration.ofSeconds(12))
                .until(page -> page.findElements(By.cssSelector(".note")).stream()
                        .anyMatch(note -> note.getText().contains("is now: held")));
        assertThat(jdbc.sql("select actor from stook.audit_entry where subject = 'run/2' order by id desc limit 1")
                        .query(String.class)
                        .single())
                .isEqualTo("ada");
    }

    private void checked(String page) throws IOException {
        browser.executeScript(axe);
        Object faults = browser.executeAsyncScript("""
                const done = arguments[arguments.length - 1];
                axe.run().then((found) => done(found.violations.map((v) =>
                  v.id + ': ' + v.help + ' at ' + v.nodes.map((n) => n.target.join(' ')).join(', '))));""");
        keep(page);
        assertThat((List<?>) faults).as("accessibility of " + page).isEmpty();
    }

    private static void width(int width) {
        browser.manage().window().setSize(new Dimension(width, 1000));
    }

    private static void keep(String page) throws IOException {
        Path shot = Path.of("target/screenshots", page.replaceAll("[^A-Za-z0-9]+", "-") + ".png");
        Files.createDirectories(shot.getParent());
        Files.write(shot, browser.getScreenshotAs(OutputType.BYTES));
    }

    private String at(String path) {
        return "http://127.0.0.1:" + port + path;
    }
}
