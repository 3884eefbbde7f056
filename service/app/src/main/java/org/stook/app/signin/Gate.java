package org.stook.app.signin;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Keeps other sites' pages out before anything else is asked, beside the tokens of the forms. A browser says where a request comes from
 * (Fetch Metadata's {@code Sec-Fetch-Site}, else {@code Origin}, RFC 6454); programs other than browsers send neither. A
 * name that is not ours in {@code Host} means that somebody's name was made to lead here (DNS rebinding).
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 20)
class Gate extends OncePerRequestFilter {
    private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS", "TRACE");
    private final List<String> hosts;

    /** @param hosts names this service may be called by, besides localhost and bare addresses */
    Gate(@Value("${stook.hosts:}") List<String> hosts) {
        this.hosts = List.copyOf(hosts);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (!ours(request.getServerName())) {
            Problem.write(
                    response,
                    HttpStatus.MISDIRECTED_REQUEST,
                    "this service is not called '" + request.getServerName()
                            + "'; name it in stook.hosts if it should be");
        } else if (!READING.contains(request.getMethod()) && !sameSite(request)) {
            Problem.write(response, HttpStatus.FORBIDDEN, "the request comes from a page of another site");
        } else {
            chain.doFilter(request, response);
        }
    }

    /** An address cannot be rebound, only a name can. */
    private boolean ours(String host) {
        String name = host.toLowerCase(Locale.ROOT);
        return name.equals("localhost")
                || name.matches("[0-9.]+|\\[?[0-9a-f:.]*:[0-9a-f:.]*\\]?")
                || hosts.contains(name);
    }

    private static boolean sameSite(HttpServletRequest request) {
        String site = request.getHeader("Sec-Fetch-Site");
        if (site != null) {
            return site.equals("same-origin") || site.equals("none");
        }
        String origin = request.getHeader(HttpHeaders.ORIGIN);
        return origin == null || host(origin).equals(request.getHeader(HttpHeaders.HOST));
    }

    private static String host(String origin) {
        try {
            @Nullable String authority = URI.create(origin).getAuthority();
            return authority == null ? "" : authority;
        } catch (IllegalArgumentException e) {
            return "";
        }
    }
}
