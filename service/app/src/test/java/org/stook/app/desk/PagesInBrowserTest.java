package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.stook.app.testing.Chromium;

/** Every page in a real browser: accessible by axe-core's rules, quiet on the console, at home on this host, on a tablet too. */
class PagesInBrowserTest extends BrowserStage {
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
            "/stacks/1/compare?left=1&right=1",
            "/nowhere");
    private static final int WIDE = 1280;
    private static final int TABLET = 820;

    private static String axe = "";

    @BeforeAll
    static void load() throws IOException {
        try (InputStream script = Objects.requireNonNull(PagesInBrowserTest.class.getResourceAsStream("/axe.min.js"))) {
            axe = new String(script.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void noPageHasAnAccessibilityFaultAComplaintOrAnAddressElsewhere() throws IOException {
        String tones = jdbc.sql("select min(id) from stook.tone_settings")
                .query(String.class)
                .single();
        for (String page : List.of("/sign-in", "/code")) {
            browser.get(at(page));
            checked(page);
        }
        Chromium.open(browser, "ada", at("/"));
        for (String named : PAGES) {
            String page = named.replace("TONES", tones);
            width(WIDE);
            browser.get(at(page));
            checked(WIDE + page);
            width(TABLET);
            accessible(TABLET + page);
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
        assertThat(browser.findElement(By.cssSelector("[data-progress='3'] .now"))
                        .getText())
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

    private static void checked(String page) throws IOException {
        browser.executeScript(axe);
        keep(page);
        accessible(page);
    }

    private static void accessible(String page) {
        Object faults = browser.executeAsyncScript("""
                const done = arguments[arguments.length - 1];
                axe.run().then((found) => done(found.violations.map((v) =>
                  v.id + ': ' + v.help + ' at ' + v.nodes.map((n) => n.target.join(' ')).join(', '))));""");
        assertThat((List<?>) faults).as("accessibility of " + page).isEmpty();
    }

    private static void width(int width) {
        browser.manage().window().setSize(new Dimension(width, 1000));
    }
}
