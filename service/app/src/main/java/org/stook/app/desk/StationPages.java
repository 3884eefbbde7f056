package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.stook.app.desk.live.Feed;
import org.stook.app.desk.live.Parts;
import org.stook.app.desk.live.Snapshot;
import org.stook.app.desk.live.View;
import org.stook.app.stack.TableWord;
import org.stook.app.station.StationBook;

/** The page at the table, and the page of a station's settings. */
@Controller
class StationPages {
    /** The newest and a few before it. */
    private static final int WORDS = 6;

    private final StationBook book;
    private final TableWord words;
    private final Feed feed;

    StationPages(StationBook book, TableWord words, Feed feed) {
        this.book = book;
        this.words = words;
        this.feed = feed;
    }

    @GetMapping("/stations/{name}")
    String station(@PathVariable String name, Model model) {
        fill(name, model);
        return "station";
    }

    /** The word at the table, whenever it is another one. */
    @GetMapping(path = "/events/stations/{name}", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter events(@PathVariable String name) {
        return feed.join(new Live(words, station(name).id()));
    }

    /** What changes on the page at the table. A sweep is being shot until nothing came for two seconds: that goes by the clock. */
    private record Live(TableWord words, long station) implements View {
        @Override
        public Map<String, String> parts(Supplier<Snapshot> now, Parts parts) {
            return Map.of("word", parts.of("word", "word", Map.of("latest", words.latest(station, WORDS))));
        }

        @Override
        public boolean goesByTheClock() {
            return true;
        }
    }

    private void fill(String name, Model model) {
        StationBook.Station station = station(name);
        List<TableWord.Word> latest = words.latest(station.id(), WORDS);
        model.addAttribute("station", station);
        model.addAttribute("latest", latest);
    }

    @GetMapping("/stations/{name}/settings")
    String settings(@PathVariable String name, Model model) {
        StationBook.Station station = station(name);
        return settings(station, SettingsForm.of(book.settings(station.id()), book.body(station.id())), "", model);
    }

    @PostMapping("/stations/{name}/settings")
    String change(
            @PathVariable String name,
            @ModelAttribute SettingsForm form,
            @RequestParam(defaultValue = "") String note,
            HttpServletRequest request,
            Model model,
            RedirectAttributes after,
            jakarta.servlet.http.HttpServletResponse response) {
        StationBook.Station station = station(name);
        try {
            int version = book.change(station.id(), form.json(), note, Visitor.of(request));
            after.addFlashAttribute(
                    Buttons.NOTE,
                    version == station.settingsVersion()
                            ? "Nothing differs from version " + version + ", which holds."
                            : "Version " + version + " holds from now on.");
            return "redirect:/stations/{name}/settings";
        } catch (IllegalArgumentException e) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return settings(station, form, String.valueOf(e.getMessage()), model);
        }
    }

    private String settings(StationBook.Station station, SettingsForm form, String refused, Model model) {
        model.addAttribute("station", station);
        model.addAttribute("form", form);
        model.addAttribute("refused", refused);
        model.addAttribute("history", book.history(station.id()));
        return "settings";
    }

    private StationBook.Station station(String name) {
        return book.find(name).orElseThrow(() -> Refusal.notFound("There is no station " + name + "."));
    }
}
