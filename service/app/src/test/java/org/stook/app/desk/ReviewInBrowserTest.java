package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.stook.app.testing.Chromium;

/** An operator's review in a real browser, with hand and keys. */
class ReviewInBrowserTest extends BrowserStage {
    private static final Duration PATIENCE = Duration.ofSeconds(40);

    /** The operator's day from the first frame to the last word. */
    @Test
    void anOperatorWatchesAStackJudgesACompositeAndHasItMadeAgain() throws IOException {
        Chromium.open(browser, "olga", at("/"));
        watchesAStackArriveAndFinish();
        press(By.linkText("Banded agate"), 0);
        until(By.id("glass"));
        looksClosely();
        touchesAPlace();
        laysTheDoubtsOver();
        outlinesARegionAndOrdersARun();
        sendsBackAndAccepts();
        setsAFrameAsideAndTakesItBack();
        assertThat(Chromium.complaints(browser)).as("the browser's console").isEmpty();
        assertThat(Chromium.requests(browser))
                .isNotEmpty()
                .allMatch(url -> url.startsWith(at("/")) || url.startsWith("data:") || url.startsWith("blob:"));
    }

    /** Nothing is pressed and nothing loaded anew: the page moves by itself. */
    private void watchesAStackArriveAndFinish() throws IOException {
        Demo.arrive(jdbc, "Garnet");
        shows("[sse-swap=arriving]", "Garnet");
        keep("review-arriving");
        sealing.seal(5, "intake");
        shows("[sse-swap=line]", "Garnet");
        Demo.claim(jdbc, 5);
        Demo.at(jdbc, 5, "blend", 0.64);
        shows("[sse-swap=running]", "64 %");
        keep("review-running");
        Demo.publish(jdbc, 5, "cd".repeat(32));
        shows("[sse-swap=published]", "Garnet");
        keep("review-finished");
    }

    private static void shows(String part, String what) {
        new WebDriverWait(browser, PATIENCE)
                .ignoring(WebDriverException.class)
                .until(page -> page.findElement(By.cssSelector(part)).getText().contains(what));
    }

    private static void looksClosely() throws IOException {
        String whole = until(By.id("scale")).getText();
        browser.findElement(By.cssSelector("[data-zoom=in]")).click();
        new WebDriverWait(browser, PATIENCE)
                .until(page -> !page.findElement(By.id("scale")).getText().equals(whole));
        keep("review-close");
        browser.findElement(By.cssSelector("[data-zoom=fit]")).click();
    }

    private void touchesAPlace() throws IOException {
        WebElement glass = browser.findElement(By.id("glass"));
        new Actions(browser).moveToElement(glass, -80, 0).click().perform();
        until(By.cssSelector("#place b[data-file='1.tif']"));
        glass.sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ENTER);
        until(By.cssSelector("#place b[data-file='2.tif']"));
        until(By.cssSelector("#place img.exact"));
        keep("review-place");
    }

    private void laysTheDoubtsOver() {
        new Select(browser.findElement(By.id("layer"))).selectByValue("doubt");
        assertThat(browser.findElement(By.id("legend")).isDisplayed()).isTrue();
    }

    private void outlinesARegionAndOrdersARun() throws IOException {
        WebElement draw = browser.findElement(By.id("region-draw"));
        draw.click();
        WebElement glass = browser.switchTo().activeElement();
        assertThat(glass.getDomAttribute("id")).isEqualTo("glass");
        glass.sendKeys("0", " ", Keys.ARROW_LEFT, " ", Keys.ARROW_UP, " ");
        browser.findElement(By.id("region-close")).click();
        assertThat(browser.findElement(By.id("region-list")).getText()).contains("3 corners");
        WebElement exposure = browser.findElement(By.id("exposureEv"));
        exposure.clear();
        exposure.sendKeys("0.5");
        new WebDriverWait(browser, PATIENCE)
                .until(ExpectedConditions.attributeContains(By.id("tone-after"), "src", "blob:"));
        keep("review-again");
        browser.findElement(By.cssSelector("#again-form button[type=submit]")).click();
        assertThat(until(By.cssSelector(".note[role=status]")).getText()).contains("is ordered with these settings");
        assertThat(jdbc.sql(
                                "select body->'overrides'->0->>'frame' from stook.tone_settings where jsonb_exists(body, 'overrides')")
                        .query(String.class)
                        .list())
                .containsExactly("0.tif");
    }

    private void sendsBackAndAccepts() throws IOException {
        WebElement reason = browser.findElement(By.cssSelector(".verdict-form [name=reason]"));
        reason.sendKeys("halo at the rim", Keys.ENTER);
        assertThat(until(By.cssSelector(".verdict-form .s-look")).getText()).contains("sent back");
        browser.findElement(By.cssSelector(".verdict-form button.main")).click();
        assertThat(until(By.cssSelector(".verdict-form .s-accept")).getText()).contains("accepted");
        keep("review-accepted");
    }

    private void setsAFrameAsideAndTakesItBack() throws IOException {
        press(By.cssSelector("form[action*='/set-aside'] button"), 3);
        assertThat(said("was set aside")).contains("version 2");
        until(By.cssSelector("form[action*='/restore'] button"));
        press(By.cssSelector("form[action*='/restore'] button"), 0);
        said("taken back|Nothing was done");
        keep("review-strays");
    }

    /** The line on what came of an order, once it says that; until then it may be that of the page before. */
    private static String said(String what) {
        return new WebDriverWait(browser, PATIENCE)
                .ignoring(WebDriverException.class)
                .until(page -> {
                    String text = page.findElement(By.cssSelector(".note[role=status]"))
                            .getText();
                    return Pattern.compile(what).matcher(text).find() ? text : null;
                });
    }

    /** The part of the page that it is in may be renewed at any moment. */
    private static void press(By what, int which) {
        new WebDriverWait(browser, PATIENCE).ignoring(WebDriverException.class).until(page -> {
            page.findElements(what).get(which).click();
            return true;
        });
    }

    private static WebElement until(By what) {
        return new WebDriverWait(browser, PATIENCE).until(ExpectedConditions.presenceOfElementLocated(what));
    }
}
