package org.stook.app.signin;

import java.time.Duration;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.authentication.dao.DaoAuthenticationProvider;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.stereotype.Component;
import org.stook.app.people.Entry;
import org.stook.app.people.Passwords;
import org.stook.app.people.People;
import org.stook.app.people.Person;
import org.stook.app.people.Throttle;

/** Checks names and passwords, from a form or HTTP Basic alike, no faster than the throttle allows. */
@Component
class Doorkeeper implements AuthenticationProvider {
    /** Too many attempts failed; {@link #pause()} has to pass first. */
    static final class TooMany extends AuthenticationException {
        private static final long serialVersionUID = 1;

        private final Duration pause;

        TooMany(Duration pause) {
            super(sentence(pause));
            this.pause = pause;
        }

        Duration pause() {
            return pause;
        }

        static String sentence(Duration pause) {
            return "too many attempts failed; the next one may be made in " + (pause.toSeconds() + 1) + " s";
        }
    }

    private static final Logger LOG = LoggerFactory.getLogger(Doorkeeper.class);

    private final People people;
    private final Entry entry;
    private final Throttle throttle;
    private final DaoAuthenticationProvider checked;

    Doorkeeper(People people, Entry entry, Passwords passwords, Throttle throttle) {
        this.people = people;
        this.entry = entry;
        this.throttle = throttle;
        this.checked = new DaoAuthenticationProvider(this::known);
        checked.setPasswordEncoder(passwords.encoder());
    }

    /** Somebody disabled or without a password is unknown, so that an answer tells nothing about who there is. */
    private UserDetails known(String name) {
        Person person = people.named(name)
                .filter(Person::active)
                .filter(Person::chosen)
                .orElseThrow(() -> new UsernameNotFoundException("unknown"));
        String hash = people.hash(person.id());
        if (hash == null) {
            throw new UsernameNotFoundException("unknown");
        }
        return new SignedIn(person, hash);
    }

    @Override
    public Authentication authenticate(Authentication attempt) {
        String name = attempt.getName();
        String address = attempt.getDetails() instanceof WebAuthenticationDetails web ? web.getRemoteAddress() : "";
        Duration pause = throttle.pause(name, address);
        if (!pause.isZero()) {
            throw new TooMany(pause);
        }
        try {
            Authentication done = checked.authenticate(attempt);
            throttle.succeeded(name, address);
            return done;
        } catch (AuthenticationException e) {
            refused(name, address);
            throw e;
        }
    }

    /** Counts an attempt with a wrong password or code. */
    void refused(String name, String address) {
        LOG.warn("sign-in refused for '{}' from {}", name.replaceAll("\\p{Cntrl}", "?"), address);
        if (throttle.failed(name, address)) {
            entry.throttled(address);
        }
    }

    /** @throws TooMany if an attempt with a code has to wait */
    void mayTry(String name, String address) {
        Duration pause = throttle.pause(name, address);
        if (!pause.isZero()) {
            throw new TooMany(pause);
        }
    }

    @Override
    public boolean supports(Class<?> kind) {
        return UsernamePasswordAuthenticationToken.class.isAssignableFrom(kind);
    }
}
