package org.stook.app.signin;

import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.CredentialsContainer;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.userdetails.UserDetails;
import org.stook.app.people.Person;
import org.stook.app.people.Role;

/** Who is signed in, as known at that time. */
public final class SignedIn implements UserDetails, CredentialsContainer {
    private static final long serialVersionUID = 1;

    private final long id;
    private final String name;
    private final List<Role> roles;
    private final int edition;
    private @Nullable String hash;

    SignedIn(Person person, String hash) {
        this.id = person.id();
        this.name = person.name();
        this.roles = List.copyOf(person.roles());
        this.edition = person.edition();
        this.hash = hash;
    }

    public long id() {
        return id;
    }

    public boolean is(Role role) {
        return roles.contains(role);
    }

    /** For the pages, by the same lines as {@link Rules}: whether stacks are named, sealed and marked by this person. */
    public boolean worksAtTables() {
        return is(Role.PHOTOGRAPHER) || orders();
    }

    /** For the pages: whether orders for stacks, frames, runs and settings are taken from this person. */
    public boolean orders() {
        return is(Role.OPERATOR) || is(Role.ADMINISTRATOR);
    }

    /** For the pages: whether this person packs, saves pulls and calls removals off. */
    public boolean keeps() {
        return is(Role.ARCHIVIST) || orders();
    }

    /** For the pages: whether this person lets others in. */
    public boolean administers() {
        return is(Role.ADMINISTRATOR);
    }

    boolean standsFor(Person person) {
        return person.active() && person.edition() == edition;
    }

    @Override
    public Collection<? extends GrantedAuthority> getAuthorities() {
        return roles.stream()
                .map(role -> new SimpleGrantedAuthority("ROLE_" + role.name()))
                .toList();
    }

    @Override
    public @Nullable String getPassword() {
        return hash;
    }

    @Override
    public String getUsername() {
        return name;
    }

    @Override
    public void eraseCredentials() {
        hash = null;
    }
}
