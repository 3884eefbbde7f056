package org.stook.app.signin;

import java.security.Principal;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.server.ResponseStatusException;
import org.stook.app.people.People;
import org.stook.app.people.Person;
import org.stook.app.people.Rights;
import org.stook.app.people.Role;

/** The people as JSON, for administrators. */
@RestController
@RequestMapping("/api/people")
class PeopleApi {
    /** @param roles photographer, operator, archivist, administrator */
    record Newcomer(@Nullable String name, @Nullable List<String> roles) {}

    /** @param active whether the person may sign in */
    record Change(@Nullable List<String> roles, boolean active) {}

    private final People people;
    private final Rights rights;

    PeopleApi(People people, Rights rights) {
        this.people = people;
        this.rights = rights;
    }

    @GetMapping
    List<Person> all() {
        return people.all();
    }

    @GetMapping("/{id}")
    Person one(@PathVariable long id) {
        return people.find(id)
                .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND, "there is no person " + id));
    }

    /** The answer has the one-time code, which is shown this once. */
    @PostMapping
    @ResponseStatus(HttpStatus.CREATED)
    Rights.Invitation add(@RequestBody Newcomer newcomer, Principal who) {
        return answered(() ->
                rights.add(Objects.requireNonNullElse(newcomer.name(), ""), roles(newcomer.roles()), who.getName()));
    }

    @PutMapping("/{id}")
    Person change(@PathVariable long id, @RequestBody Change change, Principal who) {
        one(id);
        return answered(() -> rights.change(id, roles(change.roles()), change.active(), who.getName()));
    }

    /** Makes the password void and gives a new one-time code. */
    @PostMapping("/{id}/reset")
    Rights.Invitation reset(@PathVariable long id, Principal who) {
        one(id);
        return answered(() -> rights.reset(id, who.getName()));
    }

    private static List<Role> roles(@Nullable List<String> words) {
        return words == null ? List.of() : words.stream().map(Role::of).toList();
    }

    private static <T> T answered(Supplier<T> act) {
        try {
            return act.get();
        } catch (IllegalArgumentException e) {
            throw new ResponseStatusException(HttpStatus.UNPROCESSABLE_CONTENT, e.getMessage(), e);
        } catch (IllegalStateException e) {
            throw new ResponseStatusException(HttpStatus.CONFLICT, e.getMessage(), e);
        }
    }
}
