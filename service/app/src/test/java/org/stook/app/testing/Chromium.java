package org.stook.app.testing;

import java.io.File;
import java.util.List;
import java.util.logging.Level;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** The Chromium of the machine (Debian: packages chromium and chromium-driver). */
public final class Chromium {
    private static final File DRIVER = new File("/usr/bin/chromedriver");

    private Chromium() {}

    /** A window of that width. Where there is no Chromium the test is skipped, and says so; the merge gate has one. */
    public static ChromeDriver open(int width) {
        if (!DRIVER.canExecute()) {
            System.err.println("\n*** NO CHROMIUM HERE (" + DRIVER + " is absent): THE BROWSER TESTS DO NOT RUN. ***"
                    + "\n*** Debian: apt-get install chromium chromium-driver ***\n");
        }
        Assumptions.assumeTrue(DRIVER.canExecute(), "chromedriver is absent");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        ChromeOptions options = new ChromeOptions();
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--no-first-run",
                "--window-size=" + width + ",1000");
        options.setCapability("goog:loggingPrefs", logs);
        return new ChromeDriver(
                new ChromeDriverService.Builder().usingDriverExecutable(DRIVER).build(), options);
    }

    /** Opens a page as one of {@link Everyone}, whoever was signed in before. */
    public static void open(ChromeDriver browser, String name, String url) {
        browser.manage().deleteAllCookies();
        browser.get(url);
        if (browser.getTitle().startsWith("Sign in")) {
            browser.findElement(By.name("name")).sendKeys(name);
            browser.findElement(By.name("password")).sendKeys(Everyone.PASSWORD, Keys.ENTER);
            browser.get(url);
        }
    }

    /** Warnings and errors on the console since the last call, violations of the content policy among them. */
    public static List<String> complaints(ChromeDriver browser) {
        return browser.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** Every address that was asked for since the last call. */
    public static List<String> requests(ChromeDriver browser) {
        var url = java.util.regex.Pattern.compile(
                "\"method\":\"Network.requestWillBeSent\".*?\"request\":\\{.*?\"url\":\"([^\"]+)\"");
        return browser.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
                .map(entry -> url.matcher(entry.getMessage()))
                .filter(java.util.regex.Matcher::find)
                .map(match -> match.group(1))
                .toList();
    }
}
