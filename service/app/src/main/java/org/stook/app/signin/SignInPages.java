package org.stook.app.signin;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.stook.app.people.Entry;
import org.stook.app.people.SetUp;

/** The pages before one is in: sign-in, the set-up of the first start, and a one-time code. */
@Controller
class SignInPages {
    private static final String NOTE = "note";

    /** What was typed; the two passwords have to be the same. */
    record Typed(String code, String name, String password, String again) {
        Typed {
            code = code == null ? "" : code;
            name = name == null ? "" : name;
            password = password == null ? "" : password;
            again = again == null ? "" : again;
        }
    }

    private interface Use {
        /** @return false if the code is not right */
        boolean code(Typed typed);
    }

    private final SetUp setUp;
    private final Entry entry;
    private final Doorkeeper keeper;

    SignInPages(SetUp setUp, Entry entry, Doorkeeper keeper) {
        this.setUp = setUp;
        this.entry = entry;
        this.keeper = keeper;
    }

    @GetMapping(Doorstep.SIGN_IN)
    String signIn(@RequestParam(defaultValue = "0") int wait, Model model) {
        model.addAttribute("wait", Math.max(0, wait));
        return setUp.open() ? "redirect:/setup" : "sign-in";
    }

    @GetMapping("/setup")
    String setup(@RequestParam(defaultValue = "") String code, Model model) {
        return setUp.open() ? form("setup", new Typed(code, "", "", ""), "", model) : "redirect:/sign-in";
    }

    @PostMapping("/setup")
    String setup(
            Typed typed,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model,
            RedirectAttributes after) {
        if (!setUp.open()) {
            return "redirect:/sign-in";
        }
        String wrong = refusal(
                typed,
                request.getRemoteAddr(),
                t -> setUp.accept(t.code(), t.name(), t.password()),
                "this is not the code of this start; the newest one is at the end of the log");
        return wrong.isEmpty() ? done(typed, after) : refused("setup", typed, wrong, response, model);
    }

    @GetMapping("/code")
    String code(
            @RequestParam(defaultValue = "") String name, @RequestParam(defaultValue = "") String code, Model model) {
        return form("code", new Typed(code, name, "", ""), "", model);
    }

    @PostMapping("/code")
    String code(
            Typed typed,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model,
            RedirectAttributes after) {
        String wrong = refusal(
                typed,
                request.getRemoteAddr(),
                t -> entry.choose(t.name(), t.code(), t.password()),
                "name and code do not belong together, or the code was used or is too old; ask for a new one");
        return wrong.isEmpty() ? done(typed, after) : refused("code", typed, wrong, response, model);
    }

    /** @return why it was refused, empty if it was not */
    private String refusal(Typed typed, String address, Use use, String wrongCode) {
        if (!typed.password().equals(typed.again())) {
            return "the two passwords differ";
        }
        try {
            keeper.mayTry(typed.name(), address);
            if (use.code(typed)) {
                return "";
            }
            keeper.refused(typed.name(), address);
            return wrongCode;
        } catch (IllegalArgumentException | Doorkeeper.TooMany e) {
            return String.valueOf(e.getMessage());
        }
    }

    private static String done(Typed typed, RedirectAttributes after) {
        after.addFlashAttribute(NOTE, "The password is set. Sign in with it, " + typed.name() + ".");
        return "redirect:/sign-in";
    }

    private static String refused(String page, Typed typed, String why, HttpServletResponse response, Model model) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return form(page, typed, why, model);
    }

    private static String form(String page, Typed typed, String why, Model model) {
        model.addAttribute("typed", typed);
        model.addAttribute("refused", why);
        return page;
    }
}
