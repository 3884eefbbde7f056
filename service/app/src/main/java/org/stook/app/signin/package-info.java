/**
 * The way in over the web: Spring Security's rules, the pages for sign-in, set-up and one-time codes, and the page of the
 * people. Who acts is the name of the request's principal.
 *
 * <p>How to allow or forbid a path: one line in {@code Rules}, the first that matches decides.
 */
@NullMarked
package org.stook.app.signin;

import org.jspecify.annotations.NullMarked;
