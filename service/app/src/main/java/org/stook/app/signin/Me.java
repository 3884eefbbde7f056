package org.stook.app.signin;

import org.jspecify.annotations.Nullable;
import org.springframework.security.core.Authentication;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/** Tells every page who looks at it. */
@ControllerAdvice(annotations = Controller.class)
class Me {
    @ModelAttribute("me")
    @Nullable
    SignedIn me(@Nullable Authentication who) {
        return who != null && who.getPrincipal() instanceof SignedIn person ? person : null;
    }
}
