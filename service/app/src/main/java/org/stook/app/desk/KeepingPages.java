package org.stook.app.desk;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.stook.app.audit.HeadExport;
import org.stook.app.keeping.Fixity;
import org.stook.app.keeping.Forecast;
import org.stook.app.keeping.Retention;

/** What the archivist looks after: damaged files, announced removals, room, the places of the audit trail's heads. */
@Controller
class KeepingPages {
    private static final int MOST = 200;
    private static final String BACK = "redirect:/keeping";

    private final Fixity fixity;
    private final Retention retention;
    private final Forecast forecast;
    private final HeadExport heads;

    KeepingPages(Fixity fixity, Retention retention, Forecast forecast, HeadExport heads) {
        this.fixity = fixity;
        this.retention = retention;
        this.forecast = forecast;
        this.heads = heads;
    }

    @GetMapping("/keeping")
    String keeping(Model model) {
        model.addAttribute("progress", fixity.progress());
        model.addAttribute("damaged", fixity.damaged(MOST));
        model.addAttribute("announced", retention.announced(MOST));
        model.addAttribute("outlooks", forecast.outlooks());
        model.addAttribute("places", heads.places());
        return "keeping";
    }

    @PostMapping("/keeping/{run}/keep")
    String keep(@PathVariable long run, HttpServletRequest request, RedirectAttributes after) {
        boolean kept = retention.keep(run, Visitor.of(request));
        after.addFlashAttribute(
                Buttons.NOTE,
                kept
                        ? "The publication of run " + run + " is kept."
                        : "Nothing was done: no removal of run " + run + " is announced.");
        return BACK;
    }

    /** @param supersededDays none: nothing of the station is removed any more */
    @PostMapping("/stations/{station}/retention")
    String decide(
            @PathVariable String station,
            @RequestParam(required = false) @Nullable Integer supersededDays,
            @RequestParam(defaultValue = "30") int graceDays,
            @RequestParam(required = false) @Nullable String note,
            HttpServletRequest request,
            RedirectAttributes after) {
        Retention.Policy policy;
        try {
            policy = new Retention.Policy(supersededDays, graceDays, note);
        } catch (IllegalArgumentException e) {
            throw new ResponseStatusException(HttpStatus.BAD_REQUEST, String.valueOf(e.getMessage()), e);
        }
        if (!retention.decide(station, policy, Visitor.of(request))) {
            throw new ResponseStatusException(HttpStatus.NOT_FOUND, "there is no station " + station);
        }
        after.addFlashAttribute(Buttons.NOTE, "Station " + station + " has a new retention policy.");
        return BACK;
    }
}
