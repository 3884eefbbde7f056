package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.security.Principal;

/** Who acts, for the audit entries. */
final class Visitor {
    private Visitor() {}

    static String of(HttpServletRequest request) {
        Principal who = request.getUserPrincipal();
        if (who == null) {
            throw new IllegalStateException("an order reached the desk without a sign-in");
        }
        return who.getName();
    }
}
