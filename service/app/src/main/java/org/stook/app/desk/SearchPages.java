package org.stook.app.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.stook.app.stack.Search;
import org.stook.app.station.ToneBook;

/** Search, and the tone settings. */
@Controller
class SearchPages {
    private static final int PAGE = 50;

    /** A member of two sets of settings; null where one has none. */
    record Line(
            String name, @Nullable String left, @Nullable String right) {
        public boolean differs() {
            return !Objects.equals(left, right);
        }
    }

    private final Search search;
    private final ToneBook tones;

    SearchPages(Search search, ToneBook tones) {
        this.search = search;
        this.tones = tones;
    }

    @GetMapping("/search")
    String search(@RequestParam(defaultValue = "") String text, Model model) {
        model.addAttribute("text", text.strip());
        if (!text.isBlank()) model.addAttribute("found", search.find(text));
        return "search";
    }

    @GetMapping("/tones")
    String tones(Model model) {
        model.addAttribute("all", tones.all());
        return "tones";
    }

    @GetMapping("/tones/{id:[0-9a-f]{64}}")
    String tones(@PathVariable String id, @RequestParam(defaultValue = "0") long before, Model model) {
        List<ToneBook.Use> uses = tones.uses(id, before > 0 ? before : Long.MAX_VALUE, PAGE);
        model.addAttribute("detail", known(id));
        model.addAttribute("versions", tones.versions(id));
        model.addAttribute("uses", uses);
        model.addAttribute("next", uses.size() == PAGE ? uses.get(PAGE - 1).run() : 0L);
        return "tone";
    }

    @GetMapping("/tones/compare")
    String compare(@RequestParam String left, @RequestParam String right, Model model) {
        ToneBook.Detail one = known(left);
        ToneBook.Detail other = known(right);
        TreeSet<String> names = new TreeSet<>(one.members().keySet());
        names.addAll(other.members().keySet());
        List<Line> lines = new ArrayList<>();
        names.forEach(name -> lines.add(
                new Line(name, one.members().get(name), other.members().get(name))));
        model.addAttribute("left", one.tones());
        model.addAttribute("right", other.tones());
        model.addAttribute("differing", lines.stream().filter(Line::differs).toList());
        model.addAttribute(
                "same", lines.stream().filter(line -> !line.differs()).toList());
        return "tones-compare";
    }

    private ToneBook.Detail known(String id) {
        return tones.find(id).orElseThrow(() -> Refusal.notFound("There are no tone settings " + id + "."));
    }
}
