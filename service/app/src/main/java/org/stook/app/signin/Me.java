package org.stook.app.signin;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.Authentication;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/** Tells every page who looks at it. */
@ControllerAdvice(annotations = Controller.class)
class Me {
    /** The place of the desk that the page belongs to, which its head marks: the first part of the path. */
    @ModelAttribute("here")
    String here(HttpServletRequest request) {
        return request.getRequestURI().split("/", 3)[1];
    }

    @ModelAttribute("me")
    @Nullable
    SignedIn me(@Nullable Authentication who) {
        return who != null && who.getPrincipal() instanceof SignedIn person ? person : null;
    }
}
