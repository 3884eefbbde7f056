package org.stook.app.testing;

import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.bcrypt.BCryptPasswordEncoder;

/**
 * One person of every role: pim the photographer, olga the operator, arno the archivist, ada the administrator. In the test
 * of a service: {@code Everyone.fill(jdbc)} once, then {@code Everyone.as("olga", HttpRequest.newBuilder(uri))}.
 */
public final class Everyone {
    public static final String PASSWORD = "four slow brown snails";

    private Everyone() {}

    public static void fill(JdbcClient jdbc) {
        // The cheapest cost there is: the tests are not about guessing.
        String hash = "{bcrypt}" + new BCryptPasswordEncoder(4).encode(PASSWORD);
        String[][] all = {{"pim", "PHOTOGRAPHER"}, {"olga", "OPERATOR"}, {"arno", "ARCHIVIST"}, {"ada", "ADMINISTRATOR"}
        };
        for (String[] one : all) {
            jdbc.sql("insert into stook.person (name, roles, password) values (?, array[?], ?)"
                            + " on conflict (lower(name)) do nothing")
                    .params(one[0], one[1], hash)
                    .update();
        }
    }

    /** The same request by that person, over HTTP Basic; such a request needs no form's token. */
    public static HttpRequest.Builder as(String name, HttpRequest.Builder request) {
        byte[] pair = (name + ":" + PASSWORD).getBytes(StandardCharsets.UTF_8);
        return request.header("Authorization", "Basic " + Base64.getEncoder().encodeToString(pair));
    }
}
