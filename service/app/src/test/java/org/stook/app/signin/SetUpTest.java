package org.stook.app.signin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.ConnectException;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.stook.app.testing.OneStation;
import org.stook.postgres.testing.TestDatabase;

/** The first start of a service that is configured to be open to the network. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"stook.recurring=false", "stook.zone=UTC", "server.address=0.0.0.0"})
class SetUpTest {
    private static final String PASSWORD = "four slow brown snails";

    /** An address of this machine that is served by "all addresses", but not by 127.0.0.1 alone. */
    private static final String OTHER_ADDRESS = "127.0.0.2";

    @TempDir
    static Path folder;

    @Value("${local.server.port}")
    private int port;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private Listening listening;

    @DynamicPropertySource
    static void studio(DynamicPropertyRegistry registry) {
        OneStation.logins(registry, TestDatabase.fresh(SetUpTest.class));
        registry.add("stook.setup-file", () -> folder.resolve("setup-code").toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update stook.audit_entry set actor = 'eve'",
                "delete from stook.audit_entry",
                "truncate stook.audit_entry",
                "delete from stook.audit_leaf",
                "alter table stook.audit_entry disable trigger all",
                "set session_replication_role = replica"
            })
    void theServicesOwnLoginCannotChangeTheTrail(String sql) {
        assertThatThrownBy(() -> jdbc.sql(sql).update())
                .rootCause()
                .hasMessageMatching("(?s).*(permission denied|must be owner).*");
    }

    @Test
    void theFirstPersonComesInByTheCodeOfThisStartAndOnlyThenTheServiceOpens() throws IOException {
        Path file = folder.resolve("setup-code");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        String code = Files.readString(file).trim();
        assertThatExceptionOfType(ConnectException.class).isThrownBy(this::reachOtherAddress);

        Browser browser = new Browser(port);
        assertThat(Browser.where(browser.get("/"))).isEqualTo("/sign-in");
        assertThat(Browser.where(browser.get("/sign-in"))).isEqualTo("/setup");
        assertThat(browser.get("/setup?code=" + code).body()).contains(code, "administrator");
        assertThat(setUp(browser, "AAAA-AAAA-AAAA-AAAA-AAAA", PASSWORD)).contains("not the code of this start");
        assertThat(setUp(browser, code, "short")).contains("at least 12 characters");
        assertThat(jdbc.sql("select count(*) from stook.person")
                        .query(Integer.class)
                        .single())
                .isZero();
        assertThat(Browser.where(
                        browser.post("/setup", "code", code, "name", "Ada", "password", PASSWORD, "again", PASSWORD)))
                .isEqualTo("/sign-in");
        assertThat(file).doesNotExist();

        listening.look();
        listening.look();
        browser = new Browser(port); // Open connections were cut.
        reachOtherAddress();
        assertThat(Browser.where(browser.get("/setup"))).isEqualTo("/sign-in");
        browser.get("/sign-in");
        assertThat(Browser.where(
                        browser.post("/setup", "code", code, "name", "Eve", "password", PASSWORD, "again", PASSWORD)))
                .isEqualTo("/sign-in");
        assertThat(Browser.where(browser.signIn("ada", PASSWORD))).isEqualTo("/");
        assertThat(browser.get("/").body()).contains("Queue", "Ada", "Sign out");
        assertThat(jdbc.sql("select actor || ' ' || kind from stook.audit_entry where subject = 'person/1' order by id")
                        .query(String.class)
                        .list())
                .containsExactly("set-up person.FIRST-ADMINISTRATOR", "Ada person.SIGNED-IN");
    }

    private static String setUp(Browser browser, String code, String password) {
        return browser.post("/setup", "code", code, "name", "Ada", "password", password, "again", password)
                .body();
    }

    private void reachOtherAddress() throws IOException {
        try (Socket socket = new Socket(OTHER_ADDRESS, port)) {
            assertThat(socket.isConnected()).isTrue();
        }
    }
}
