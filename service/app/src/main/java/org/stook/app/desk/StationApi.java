package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stook.app.stack.TableWord;
import org.stook.app.station.StationBook;

/** Stations, their settings and the word at their tables as JSON. */
@RestController
@RequestMapping("/api/stations")
class StationApi {
    private static final int WORDS = 20;

    private final StationBook book;
    private final TableWord words;

    StationApi(StationBook book, TableWord words) {
        this.book = book;
        this.words = words;
    }

    @GetMapping
    List<StationBook.Station> stations() {
        return book.all();
    }

    @GetMapping("/{name}/word")
    List<TableWord.Word> word(@PathVariable String name) {
        return words.latest(station(name).id(), WORDS);
    }

    @GetMapping(path = "/{name}/settings", produces = MediaType.APPLICATION_JSON_VALUE)
    String settings(@PathVariable String name) {
        return book.body(station(name).id());
    }

    @GetMapping("/{name}/settings/versions")
    List<StationBook.Version> versions(@PathVariable String name) {
        return book.history(station(name).id());
    }

    /** Takes the whole document. @return the station with the version that holds now */
    @PutMapping(path = "/{name}/settings", consumes = MediaType.APPLICATION_JSON_VALUE)
    StationBook.Station change(
            @PathVariable String name,
            @RequestBody String body,
            @RequestParam(defaultValue = "") String note,
            HttpServletRequest request) {
        StationBook.Station station = station(name);
        try {
            book.change(station.id(), body, note, Visitor.of(request));
        } catch (IllegalArgumentException e) {
            throw Refusal.unfit(String.valueOf(e.getMessage()));
        }
        return station(name);
    }

    private StationBook.Station station(String name) {
        return book.find(name).orElseThrow(() -> Refusal.notFound("there is no station " + name));
    }
}
