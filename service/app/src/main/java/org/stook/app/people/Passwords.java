package org.stook.app.people;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.springframework.security.crypto.bcrypt.BCryptPasswordEncoder;
import org.springframework.security.crypto.password.DelegatingPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;

/**
 * What makes a password, and how it is kept: bcrypt, its name in front so that another method can follow. Length counts and
 * no mixture of signs is asked for, as NIST SP 800-63B (3.1.1) advises.
 */
@Component
public class Passwords {
    static final int SHORTEST = 12;
    /** bcrypt reads no more than that (Provos, Mazières 1999). */
    private static final int MOST_BYTES = 72;
    /** Some 150 ms a guess on the machine this was written on. */
    private static final int COST = 11;

    private final PasswordEncoder encoder =
            new DelegatingPasswordEncoder("bcrypt", java.util.Map.of("bcrypt", new BCryptPasswordEncoder(COST)));

    public PasswordEncoder encoder() {
        return encoder;
    }

    /** @throws IllegalArgumentException with a sentence if it will not do */
    String hash(String name, String password) {
        if (password.codePointCount(0, password.length()) < SHORTEST) {
            throw new IllegalArgumentException("a password needs at least " + SHORTEST
                    + " characters; a few words that do not belong together are easy to keep in mind");
        }
        if (password.getBytes(StandardCharsets.UTF_8).length > MOST_BYTES) {
            throw new IllegalArgumentException("a password may have at most " + MOST_BYTES + " bytes");
        }
        if (password.toLowerCase(Locale.ROOT).contains(name.toLowerCase(Locale.ROOT))) {
            throw new IllegalArgumentException("a password must not contain the name");
        }
        if (password.codePoints().distinct().count() < SHORTEST / 3) {
            throw new IllegalArgumentException("this password repeats too few different characters");
        }
        return java.util.Objects.requireNonNull(encoder.encode(password));
    }
}
