package org.stook.app.desk;

import java.util.List;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stook.app.queue.Crew;
import org.stook.app.queue.ShareList;
import org.stook.app.stack.Search;
import org.stook.app.station.ToneBook;

/** Workers, shares, tone settings and the search as JSON. */
@RestController
@RequestMapping("/api")
class StudioApi {
    private final StudioView studio;
    private final ToneBook tones;
    private final Search search;

    StudioApi(StudioView studio, ToneBook tones, Search search) {
        this.studio = studio;
        this.tones = tones;
        this.search = search;
    }

    @GetMapping("/workers")
    List<Crew.Member> workers() {
        return studio.workers();
    }

    @GetMapping("/shares")
    List<ShareList.Share> shares() {
        return studio.shares();
    }

    @GetMapping("/tones")
    List<ToneBook.Tones> tones() {
        return tones.all();
    }

    @GetMapping("/tones/{id}")
    ToneBook.Detail tones(@PathVariable String id) {
        return tones.find(id).orElseThrow(() -> Refusal.notFound("there are no tone settings " + id));
    }

    /** Runs that were ordered with these settings, the newest first. */
    @GetMapping("/tones/{id}/uses")
    List<ToneBook.Use> uses(
            @PathVariable String id,
            @RequestParam(defaultValue = "9223372036854775807") long before,
            @RequestParam(defaultValue = "100") int limit) {
        return tones.uses(id, before, Api.bounded(limit));
    }

    @GetMapping("/search")
    Search.Found search(@RequestParam String text) {
        if (text.isBlank()) throw Refusal.unfit("text: found nothing, expected a word to look for");
        return search.find(text);
    }
}
