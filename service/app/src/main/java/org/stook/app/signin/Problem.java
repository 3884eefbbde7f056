package org.stook.app.signin;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.springframework.http.HttpStatus;

/** A problem detail (RFC 9457) written before any controller is reached. */
final class Problem {
    private Problem() {}

    static void write(HttpServletResponse response, HttpStatus status, String detail) throws IOException {
        response.setStatus(status.value());
        response.setContentType("application/problem+json");
        response.setCharacterEncoding(StandardCharsets.UTF_8);
        response.getWriter()
                .write("{\"title\":\"%s\",\"status\":%d,\"detail\":\"%s\"}"
                        .formatted(
                                status.getReasonPhrase(),
                                status.value(),
                                detail.replaceAll("[\\\\\"\\p{Cntrl}]", "?")));
    }
}
