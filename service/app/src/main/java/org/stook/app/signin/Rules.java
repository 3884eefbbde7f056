package org.stook.app.signin;

import jakarta.servlet.DispatcherType;
import org.springframework.http.HttpMethod;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AuthorizeHttpRequestsConfigurer;
import org.stook.app.people.Role;

/** Who may do what, path by path; the first line that matches decides. Looking is for all who are signed in. */
final class Rules {
    private static final String PHOTOGRAPHER = Role.PHOTOGRAPHER.name();
    private static final String OPERATOR = Role.OPERATOR.name();
    private static final String ARCHIVIST = Role.ARCHIVIST.name();
    private static final String ADMINISTRATOR = Role.ADMINISTRATOR.name();

    private Rules() {}

    static void set(AuthorizeHttpRequestsConfigurer<HttpSecurity>.AuthorizationManagerRequestMatcherRegistry paths) {
        // What is dispatched on was let in before; an error page must be shown to those who were not, too.
        paths.dispatcherTypeMatchers(DispatcherType.ERROR, DispatcherType.ASYNC, DispatcherType.FORWARD)
                .permitAll()
                .requestMatchers("/sign-in", "/setup", "/code", "/error", "/actuator/health")
                .permitAll()
                .requestMatchers(HttpMethod.GET, "/desk.css", "/desk.js", "/mark.svg", "/webjars/**")
                .permitAll()
                .requestMatchers("/people", "/people/**", "/api/people", "/api/people/**")
                .hasRole(ADMINISTRATOR)
                .requestMatchers(HttpMethod.GET)
                .authenticated()
                .requestMatchers(HttpMethod.HEAD)
                .authenticated()
                .requestMatchers("/sign-out")
                .permitAll()
                .requestMatchers("/stacks/*/name", "/stacks/*/seal", "/stacks/*/on-table")
                .hasAnyRole(PHOTOGRAPHER, OPERATOR, ADMINISTRATOR)
                .requestMatchers("/api/stacks/*/name", "/api/stacks/*/seal", "/api/stacks/*/on-table")
                .hasAnyRole(PHOTOGRAPHER, OPERATOR, ADMINISTRATOR)
                .requestMatchers("/archive/**", "/api/archive/**")
                .hasAnyRole(ARCHIVIST, OPERATOR, ADMINISTRATOR)
                .requestMatchers("/keeping/**", "/api/keeping/**", "/stations/*/retention", "/api/stations/*/retention")
                .hasAnyRole(ARCHIVIST, OPERATOR, ADMINISTRATOR)
                .anyRequest()
                .hasAnyRole(OPERATOR, ADMINISTRATOR);
    }
}
