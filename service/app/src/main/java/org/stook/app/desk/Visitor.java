package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;

/** Who acts, for the audit entries. There is no sign-in yet, so all that is known is where from. */
final class Visitor {
    private Visitor() {}

    static String of(HttpServletRequest request) {
        return "desk, not signed in, from " + request.getRemoteAddr();
    }
}
