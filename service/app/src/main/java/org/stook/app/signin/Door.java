package org.stook.app.signin;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpHeaders;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.authentication.AuthenticationFailureHandler;
import org.springframework.security.web.authentication.SavedRequestAwareAuthenticationSuccessHandler;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.savedrequest.HttpSessionRequestCache;
import org.stook.app.people.Entry;
import org.stook.app.people.People;

/** One chain for pages and API: a session by the sign-in form, or HTTP Basic with every request. */
@Configuration(proxyBeanMethods = false)
class Door {
    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:;"
                    + " connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

    @Bean
    SecurityFilterChain chain(HttpSecurity http, Doorkeeper keeper, Doorstep step, People people, Entry entry) {
        return http.authenticationProvider(keeper)
                .authorizeHttpRequests(Rules::set)
                .formLogin(form -> form.loginPage(Doorstep.SIGN_IN)
                        .usernameParameter("name")
                        .successHandler(welcome(entry))
                        .failureHandler(failure()))
                .httpBasic(basic -> basic.authenticationEntryPoint(step))
                .logout(out -> out.logoutUrl("/sign-out").logoutSuccessUrl("/sign-in?out"))
                .exceptionHandling(on -> on.authenticationEntryPoint(step).accessDeniedHandler(step))
                .requestCache(cache -> cache.requestCache(pagesOnly()))
                // No page of another site can make a browser send this header: browsers are never asked for it
                // (Doorstep),
                // and the Gate refuses other sites besides.
                .csrf(csrf ->
                        csrf.ignoringRequestMatchers(request -> request.getHeader(HttpHeaders.AUTHORIZATION) != null))
                .addFilterBefore(new Standing(people), AuthorizationFilter.class)
                .headers(Door::headers)
                .build();
    }

    private static void headers(HeadersConfigurer<HttpSecurity> headers) {
        headers.contentSecurityPolicy(csp -> csp.policyDirectives(POLICY))
                .frameOptions(HeadersConfigurer.FrameOptionsConfig::deny)
                .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
                .crossOriginOpenerPolicy(opener -> opener.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
                .crossOriginResourcePolicy(resource -> resource.policy(CrossOriginResourcePolicy.SAME_ORIGIN))
                .permissionsPolicyHeader(
                        may -> may.policy("camera=(), geolocation=(), microphone=(), payment=(), usb=()"));
    }

    /** Where a person wanted to go before the sign-in; parts of pages and streams are no place to go to. */
    private static HttpSessionRequestCache pagesOnly() {
        HttpSessionRequestCache cache = new HttpSessionRequestCache();
        cache.setRequestMatcher(request -> "GET".equals(request.getMethod())
                && !request.getRequestURI().startsWith("/api/")
                && request.getHeader("HX-Request") == null
                && String.valueOf(request.getHeader(HttpHeaders.ACCEPT)).contains("text/html"));
        return cache;
    }

    private static SavedRequestAwareAuthenticationSuccessHandler welcome(Entry entry) {
        return new SavedRequestAwareAuthenticationSuccessHandler() {
            @Override
            public void onAuthenticationSuccess(
                    HttpServletRequest request, HttpServletResponse response, Authentication who)
                    throws IOException, jakarta.servlet.ServletException {
                if (who.getPrincipal() instanceof SignedIn person) {
                    entry.came(person.id(), person.getUsername());
                }
                super.onAuthenticationSuccess(request, response, who);
            }
        };
    }

    private static AuthenticationFailureHandler failure() {
        return (request, response, why) -> response.sendRedirect(Doorstep.SIGN_IN + question(why));
    }

    private static String question(AuthenticationException why) {
        return why instanceof Doorkeeper.TooMany tooMany
                ? "?wait=" + (tooMany.pause().toSeconds() + 1)
                : "?refused";
    }
}
