package org.stook.app.signin;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.stook.app.people.People;
import org.stook.app.testing.Everyone;
import org.stook.app.testing.Migrated;
import org.stook.app.testing.OneStation;

/** Sign-in and what each role may do, over a real port, as error dispatches do not happen in a mock. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"stook.recurring=false", "stook.zone=UTC"})
class DoorTest {
    @Value("${local.server.port}")
    private int port;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private People people;

    @DynamicPropertySource
    static void studio(DynamicPropertyRegistry registry) {
        OneStation.logins(registry, Migrated.database(DoorTest.class));
    }

    @BeforeAll
    static void fill(@Autowired JdbcClient jdbc) {
        Everyone.fill(jdbc);
    }

    @Test
    void nobodyGetsInWithoutSigningIn() {
        Browser browser = new Browser(port);
        assertThat(Browser.where(browser.get("/"))).isEqualTo("/sign-in");
        assertThat(browser.get("/api/publications").statusCode()).isEqualTo(401);
        assertThat(browser.get("/api/publications", "Authorization", "Basic b2xnYTp3cm9uZw==")
                        .statusCode())
                .isEqualTo(401);
        assertThat(browser.get("/events/queue", "Accept", "text/event-stream").statusCode())
                .isEqualTo(401);
        HttpResponse<String> part = browser.get("/board", "HX-Request", "true");
        assertThat(part.statusCode()).isEqualTo(401);
        assertThat(part.headers().firstValue("HX-Redirect")).contains("/sign-in");
        assertThat(browser.get("/actuator/health", "Accept", "*/*").statusCode())
                .isEqualTo(200);
        assertThat(browser.get("/actuator/env").statusCode()).isNotEqualTo(200);
    }

    @Test
    void aBrowserIsNotAskedForHttpBasicButAProgramIs() {
        Browser browser = new Browser(port);
        assertThat(browser.get("/api/publications").headers().firstValue("WWW-Authenticate"))
                .isPresent();
        assertThat(browser.get("/api/publications", "Sec-Fetch-Mode", "navigate")
                        .headers()
                        .firstValue("WWW-Authenticate"))
                .isEmpty();
    }

    @Test
    void headersAreStrictOnEveryAnswer() {
        for (String path : new String[] {"/sign-in", "/api/publications", "/desk.css", "/nowhere"}) {
            var headers = new Browser(port).get(path).headers();
            assertThat(headers.firstValue("Content-Security-Policy").orElse(""))
                    .as(path)
                    .startsWith("default-src 'none'")
                    .contains("frame-ancestors 'none'")
                    .doesNotContain("unsafe");
            assertThat(headers.firstValue("X-Content-Type-Options")).contains("nosniff");
            assertThat(headers.firstValue("X-Frame-Options")).contains("DENY");
            assertThat(headers.firstValue("Referrer-Policy")).contains("same-origin");
        }
        String cookie = new Browser(port)
                .get("/sign-in")
                .headers()
                .firstValue("Set-Cookie")
                .orElse("");
        assertThat(cookie).startsWith("stook=").contains("HttpOnly", "SameSite=Lax");
    }

    @Test
    void aWrongPasswordAnUnknownNameAndADisabledPersonLookTheSame() {
        assertThat(Browser.where(new Browser(port).signIn("olga", "wrong"))).isEqualTo("/sign-in?refused");
        assertThat(Browser.where(new Browser(port).signIn("nobody", "wrong"))).isEqualTo("/sign-in?refused");
    }

    @Test
    void signingInTakesOneWhereOneWantedToGoAndSigningOutEnds() {
        Browser browser = new Browser(port);
        browser.get("/stacks/1");
        assertThat(Browser.where(browser.signIn("olga", Everyone.PASSWORD))).isEqualTo("/stacks/1?continue");
        browser.get("/");
        assertThat(Browser.where(browser.post("/sign-out"))).isEqualTo("/sign-in?out");
        assertThat(Browser.where(browser.get("/"))).isEqualTo("/sign-in");
    }

    @Test
    void aFormWithoutOurTokenIsRefused() {
        Browser browser = new Browser(port);
        browser.signIn("olga", Everyone.PASSWORD);
        HttpResponse<String> answer = browser.postWith("forged", "/runs/1/cancel");
        assertThat(answer.statusCode()).isEqualTo(403);
        assertThat(answer.body()).contains("load the page anew");
        browser.get("/");
        assertThat(browser.post("/runs/1/cancel").statusCode()).isEqualTo(302);
    }

    @ParameterizedTest
    @CsvSource({
        "pim,  /stacks/1/seal,       302",
        "pim,  /runs/1/cancel,       403",
        "pim,  /people,              403",
        "arno, /stacks/1/seal,       403",
        "arno, /archive/nothing,     404",
        "olga, /runs/1/cancel,       302",
        "olga, /people/1/reset,      403",
        "ada,  /runs/1/cancel,       302"
    })
    void eachRoleMayDoItsOwn(String name, String path, int status) {
        Browser browser = new Browser(port);
        browser.signIn(name, Everyone.PASSWORD);
        browser.get("/");
        assertThat(browser.post(path).statusCode()).isEqualTo(status);
    }

    @Test
    void anAdministratorLetsSomebodyInWhoChoosesAPasswordAndLosesTheRightAtOnce() {
        Browser ada = new Browser(port);
        ada.signIn("ada", Everyone.PASSWORD);
        ada.get("/people");
        ada.post("/people", "name", "Wilma Röder", "role", "operator", "role", "archivist");
        String page = ada.get("/people").body();
        Matcher code = Pattern.compile("(?:[2-9A-Z]{4}-){4}[2-9A-Z]{4}").matcher(page);
        assertThat(code.find()).isTrue();
        assertThat(ada.get("/people").body()).as("shown once").doesNotContain(code.group());

        Browser wilma = new Browser(port);
        wilma.get("/code");
        assertThat(choose(wilma, "AAAA-AAAA-AAAA-AAAA-AAAA").body()).contains("do not belong together");
        assertThat(Browser.where(choose(wilma, code.group()))).isEqualTo("/sign-in");
        assertThat(choose(wilma, code.group()).body()).as("once").contains("do not belong together");
        wilma.signIn("wilma röder", Everyone.PASSWORD);
        assertThat(wilma.get("/").body()).contains("Wilma Röder");

        long id = people.named("Wilma Röder").orElseThrow().id();
        ada.get("/people");
        ada.post("/people/" + id, "role", "operator");
        assertThat(Browser.where(wilma.get("/"))).as("her session is over").isEqualTo("/sign-in");
        assertThat(Browser.where(wilma.signIn("Wilma Röder", Everyone.PASSWORD)))
                .isEqualTo("/sign-in?refused");
        assertThat(jdbc.sql("select actor || ' ' || kind from stook.audit_entry where subject = ? order by id")
                        .param("person/" + id)
                        .query(String.class)
                        .list())
                .containsExactly(
                        "ada person.ADDED",
                        "Wilma Röder person.PASSWORD-CHOSEN",
                        "Wilma Röder person.SIGNED-IN",
                        "ada person.DISABLED");
    }

    @Test
    void theLastAdministratorStays() {
        Browser ada = new Browser(port);
        ada.signIn("ada", Everyone.PASSWORD);
        ada.get("/people");
        long id = people.named("ada").orElseThrow().id();
        ada.post("/people/" + id, "role", "operator", "active", "true");
        assertThat(ada.get("/people").body()).contains("Nothing was done", "the only administrator");
        ada.post("/people/" + id + "/reset");
        assertThat(ada.get("/people").body()).contains("let another one in first");
        ada.post("/people", "name", "intake", "role", "operator");
        assertThat(ada.get("/people").body()).contains("the name of a part of the service");
        ada.post("/people", "name", "OLGA", "role", "operator");
        assertThat(ada.get("/people").body()).contains("there is somebody called &#39;OLGA&#39; already");
    }

    @Test
    void guessingIsSlowedDown() {
        Browser browser = new Browser(port);
        for (int i = 0; i < 5; i++) browser.signIn("guessed", "wrong");
        assertThat(Browser.where(browser.signIn("guessed", "wrong"))).startsWith("/sign-in?wait=");
        assertThat(browser.get("/sign-in?wait=30").body()).contains("in 30 seconds");
        assertThat(jdbc.sql("select count(*) from stook.audit_entry where kind = 'person.ATTEMPTS-THROTTLED'")
                        .query(Integer.class)
                        .single())
                .isEqualTo(1);
    }

    private static HttpResponse<String> choose(Browser browser, String code) {
        return browser.post(
                "/code",
                "name",
                "Wilma Röder",
                "code",
                code,
                "password",
                Everyone.PASSWORD,
                "again",
                Everyone.PASSWORD);
    }
}
