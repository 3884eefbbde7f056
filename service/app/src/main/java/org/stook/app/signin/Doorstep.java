package org.stook.app.signin;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.stereotype.Component;

/** What is answered to those who are not signed in, or who may not: pages to people, problem details to programs. */
@Component
class Doorstep implements AuthenticationEntryPoint, AccessDeniedHandler {
    static final String SIGN_IN = "/sign-in";

    @Override
    public void commence(HttpServletRequest request, HttpServletResponse response, AuthenticationException why)
            throws IOException {
        if (request.getHeader("HX-Request") != null) {
            // A part of a page cannot be replaced by the sign-in page: the whole page goes there.
            response.setHeader("HX-Redirect", SIGN_IN);
            response.setStatus(HttpStatus.UNAUTHORIZED.value());
        } else if (why instanceof Doorkeeper.TooMany tooMany) {
            response.setHeader(
                    HttpHeaders.RETRY_AFTER, Long.toString(tooMany.pause().toSeconds() + 1));
            Problem.write(response, HttpStatus.TOO_MANY_REQUESTS, String.valueOf(why.getMessage()));
        } else if (isProgram(request)) {
            challenge(request, response);
            Problem.write(response, HttpStatus.UNAUTHORIZED, "sign in with HTTP Basic or with the cookie of a session");
        } else {
            response.sendRedirect(SIGN_IN);
        }
    }

    /** A browser must not learn a password this way: it would then send it along with every request, wanted or not. */
    private static void challenge(HttpServletRequest request, HttpServletResponse response) {
        if (request.getHeader("Sec-Fetch-Mode") == null) {
            response.setHeader(HttpHeaders.WWW_AUTHENTICATE, "Basic realm=\"Stook\", charset=\"UTF-8\"");
        }
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, AccessDeniedException why)
            throws IOException {
        String sentence = why instanceof CsrfException
                ? "the form is out of date, as happens after a long pause or a sign-in elsewhere; load the page anew"
                : "your role does not allow this; an administrator can change that";
        if (isProgram(request)) {
            Problem.write(response, HttpStatus.FORBIDDEN, sentence);
        } else {
            response.sendError(HttpStatus.FORBIDDEN.value(), sentence);
        }
    }

    private static boolean isProgram(HttpServletRequest request) {
        @Nullable String accept = request.getHeader(HttpHeaders.ACCEPT);
        return request.getRequestURI().startsWith("/api/")
                || request.getHeader(HttpHeaders.AUTHORIZATION) != null
                || (accept != null && (accept.contains("json") || accept.contains("event-stream")));
    }
}
