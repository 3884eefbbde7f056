package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpRange;
import org.springframework.http.HttpStatus;
import org.stook.app.archive.bag.Tar;

/**
 * Hands out a file that exists as a plan only, whole or in part (RFC 9110, section 14), so that an interrupted pull goes on where it
 * ended. Several ranges at once are answered with the whole, as the RFC allows.
 */
final class Ranges {
    private Ranges() {}

    static void send(Tar tar, HttpServletRequest request, HttpServletResponse response) throws IOException {
        response.setHeader(HttpHeaders.ACCEPT_RANGES, "bytes");
        response.setHeader(HttpHeaders.ETAG, tar.etag());
        if (matches(request.getHeader(HttpHeaders.IF_NONE_MATCH), tar.etag())) {
            response.setStatus(HttpStatus.NOT_MODIFIED.value());
            return;
        }
        long from = 0;
        long to = tar.length();
        List<HttpRange> ranges = ranges(request, tar.etag());
        if (ranges.size() == 1) {
            from = ranges.get(0).getRangeStart(tar.length());
            to = ranges.get(0).getRangeEnd(tar.length()) + 1;
            if (from >= to) {
                response.setHeader(HttpHeaders.CONTENT_RANGE, "bytes */" + tar.length());
                throw Refusal.outOfRange("It has " + tar.length() + " bytes; what was asked for begins behind them.");
            }
            response.setStatus(HttpStatus.PARTIAL_CONTENT.value());
            response.setHeader(HttpHeaders.CONTENT_RANGE, "bytes %d-%d/%d".formatted(from, to - 1, tar.length()));
        }
        response.setContentType("application/x-tar");
        response.setContentLengthLong(to - from);
        if (!request.getMethod().equals("HEAD")) tar.write(response.getOutputStream(), from, to);
    }

    /** Whether the answer begins with the first byte: a pull that is gone on with is no new one. */
    static boolean fromTheStart(HttpServletRequest request) {
        String range = request.getHeader(HttpHeaders.RANGE);
        return request.getMethod().equals("GET") && (range == null || range.startsWith("bytes=0-"));
    }

    /** Empty if the whole is wanted, or if the part was wanted of another version of the file. */
    private static List<HttpRange> ranges(HttpServletRequest request, String etag) {
        String ifRange = request.getHeader(HttpHeaders.IF_RANGE);
        if (ifRange != null && !ifRange.equals(etag)) return List.of();
        try {
            return HttpRange.parseRanges(request.getHeader(HttpHeaders.RANGE));
        } catch (IllegalArgumentException e) {
            return List.of(); // A header that makes no sense is passed over (section 14.2).
        }
    }

    private static boolean matches(@org.jspecify.annotations.Nullable String header, String etag) {
        return header != null && List.of(header.split("\\s*,\\s*")).contains(etag);
    }
}
