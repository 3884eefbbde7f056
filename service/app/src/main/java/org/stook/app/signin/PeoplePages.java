package org.stook.app.signin;

import java.security.Principal;
import java.util.List;
import java.util.function.Supplier;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.stook.app.people.People;
import org.stook.app.people.Person;
import org.stook.app.people.Rights;
import org.stook.app.people.Role;

/** The page of the people, for administrators. */
@Controller
@RequestMapping("/people")
class PeoplePages {
    private static final String NOTE = "note";

    /** What is told to a person by hand: shown once. */
    record Told(String name, String code, String link) {}

    private final People people;
    private final Rights rights;

    PeoplePages(People people, Rights rights) {
        this.people = people;
        this.rights = rights;
    }

    @GetMapping
    String people(Model model) {
        model.addAttribute("people", people.all());
        model.addAttribute("roles", List.of(Role.values()));
        return "people";
    }

    @PostMapping
    String add(
            @RequestParam String name,
            @RequestParam(defaultValue = "") List<String> role,
            Principal who,
            RedirectAttributes after) {
        return then(after, () -> {
            Rights.Invitation invitation = rights.add(name, roles(role), who.getName());
            told(invitation, after);
            return invitation.person().name() + " may sign in after choosing a password.";
        });
    }

    @PostMapping("/{id}")
    String change(
            @PathVariable long id,
            @RequestParam(defaultValue = "") List<String> role,
            @RequestParam(defaultValue = "false") boolean active,
            Principal who,
            RedirectAttributes after) {
        return then(after, () -> {
            Person person = rights.change(id, roles(role), active, who.getName());
            String as =
                    String.join(", ", person.roles().stream().map(Role::word).toList());
            return person.active()
                    ? person.name() + " may sign in as " + as + "."
                    : person.name() + " may not sign in any more. What " + person.name() + " did stays on record.";
        });
    }

    @PostMapping("/{id}/reset")
    String reset(@PathVariable long id, Principal who, RedirectAttributes after) {
        return then(after, () -> {
            Rights.Invitation invitation = rights.reset(id, who.getName());
            told(invitation, after);
            return "The password of " + invitation.person().name() + " is void; a new one is chosen with the code.";
        });
    }

    private static List<Role> roles(List<String> words) {
        return words.stream().map(Role::of).toList();
    }

    private static void told(Rights.Invitation invitation, RedirectAttributes after) {
        String name = invitation.person().name();
        String link = ServletUriComponentsBuilder.fromCurrentContextPath()
                .path("/code")
                .queryParam("name", "{name}")
                .queryParam("code", "{code}")
                .encode()
                .buildAndExpand(name, invitation.code())
                .toUriString();
        after.addFlashAttribute("told", new Told(name, invitation.code(), link));
    }

    private static String then(RedirectAttributes after, Supplier<String> act) {
        try {
            after.addFlashAttribute(NOTE, act.get());
        } catch (IllegalArgumentException | IllegalStateException e) {
            after.addFlashAttribute(NOTE, "Nothing was done: " + e.getMessage() + ".");
        }
        return "redirect:/people";
    }
}
