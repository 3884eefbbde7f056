package org.stook.app.desk;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.stook.app.station.StationBook;

/** What every page can use. */
@ControllerAdvice(annotations = Controller.class)
class Shown {
    private final Words words;
    private final StationBook book;

    Shown(Words words, StationBook book) {
        this.words = words;
        this.book = book;
    }

    /** For the way to the tables. */
    @ModelAttribute("stations")
    List<StationBook.Station> stations() {
        return book.all();
    }

    @ModelAttribute("words")
    Words words() {
        return words;
    }
}
