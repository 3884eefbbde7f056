package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.stook.app.keeping.Retention;
import org.stook.app.station.StationBook;

/** What is kept and for how long, as JSON: policies of stations, announced removals. */
@RestController
@RequestMapping("/api")
class KeepingApi {
    private static final int USUAL_GRACE = 30;

    private final Retention retention;
    private final StationBook book;

    KeepingApi(Retention retention, StationBook book) {
        this.retention = retention;
        this.book = book;
    }

    /**
     * A policy as it is asked for.
     *
     * @param supersededDays after which files of superseded publications may go; left out: nothing goes
     * @param graceDays between the announcement and the removal; left out: 30
     */
    record Wish(
            @Nullable Integer supersededDays,
            @Nullable Integer graceDays,
            @Nullable String note) {}

    /** All versions, the one that holds first; none: nothing is removed. */
    @GetMapping("/stations/{name}/retention")
    List<Retention.Decision> policies(@PathVariable String name) {
        station(name);
        return retention.decisions(name);
    }

    /** @return the policy that holds now */
    @PutMapping("/stations/{name}/retention")
    Retention.Decision decide(@PathVariable String name, @RequestBody Wish wish, HttpServletRequest request) {
        station(name);
        Integer grace = wish.graceDays();
        try {
            Retention.Policy policy =
                    new Retention.Policy(wish.supersededDays(), grace == null ? USUAL_GRACE : grace, wish.note());
            retention.decide(name, policy, Visitor.of(request));
        } catch (IllegalArgumentException e) {
            throw Refusal.unfit(String.valueOf(e.getMessage()));
        }
        return retention.decisions(name).get(0);
    }

    /** Announced removals, the soonest first. */
    @GetMapping("/keeping/removals")
    List<Retention.Announced> removals(@RequestParam(defaultValue = "100") int limit) {
        return retention.announced(Api.bounded(limit));
    }

    /** Calls an announced removal off, for good. */
    @PostMapping("/keeping/removals/{run}/keep")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void keep(@PathVariable long run, HttpServletRequest request) {
        if (!retention.keep(run, Visitor.of(request))) {
            throw Refusal.conflict("No removal of run " + run + " is announced.");
        }
    }

    private void station(String name) {
        if (book.find(name).isEmpty()) throw Refusal.notFound("there is no station " + name);
    }
}
