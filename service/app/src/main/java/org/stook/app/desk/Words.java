package org.stook.app.desk;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** How states, times and sizes are put in words on the pages. */
@Component
public class Words {
    private static final DateTimeFormatter TODAY = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter FULL = DateTimeFormatter.ofPattern("d MMM yyyy HH:mm", Locale.ENGLISH);

    /** As workers report them, and as they are told. */
    private static final List<String> STAGES = List.of("survey", "register", "blend", "finish", "score", "publish");

    private static final List<String> STEP_WORDS =
            List.of("survey", "registration", "blend", "finish", "score", "publication");

    /** @param standing done, now or ahead */
    public record Step(String word, String standing) {}

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final ZoneId zone;

    Words(@Value("${stook.zone:}") String zone) {
        this.zone = zone.isBlank() ? ZoneId.systemDefault() : ZoneId.of(zone);
    }

    /** In the studio's zone; the date only when it is not today's. */
    public String time(Instant instant) {
        ZonedDateTime local = instant.atZone(zone);
        boolean today = local.toLocalDate().equals(ZonedDateTime.now(zone).toLocalDate());
        return (today ? TODAY : FULL).format(local);
    }

    /** To the minute, for what is only estimated. */
    public String about(Instant instant) {
        ZonedDateTime local = instant.atZone(zone);
        boolean today = local.toLocalDate().equals(ZonedDateTime.now(zone).toLocalDate());
        return (today ? MINUTE : FULL).format(local);
    }

    /** The step that a run is at, in trade words. */
    public static String step(@Nullable String stage) {
        int at = STAGES.indexOf(stage == null ? "" : stage);
        return at >= 0 ? STEP_WORDS.get(at) : stage == null ? "starting" : stage;
    }

    /** How a share stands. */
    public static String share(String state) {
        return switch (state) {
            case "OK" -> "well";
            case "GONE" -> "not there";
            case "READ_ONLY" -> "read-only";
            default -> state.toLowerCase(Locale.ROOT);
        };
    }

    /** What a person can do about a share. */
    public static String remedy(String state) {
        return switch (state) {
            case "GONE" -> "Mount it again, or start the machine that holds it. It is looked for all the time.";
            case "FULL" ->
                "Make room on it, or let retention remove superseded composites. Work goes on as soon as there is.";
            case "READ_ONLY" ->
                "Mount it so that the service and the workers may write. Work goes on as soon as they can.";
            default -> "";
        };
    }

    /** The steps of a run in their order, for a strip that fills from left to right. */
    public static List<Step> steps(@Nullable String stage) {
        int at = STAGES.indexOf(stage == null ? "" : stage);
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < STAGES.size(); i++) {
            steps.add(new Step(STEP_WORDS.get(i), i < at ? "done" : i == at ? "now" : "ahead"));
        }
        return steps;
    }

    public ZoneId zoneId() {
        return zone;
    }

    public String zone() {
        return zone.getId();
    }

    public String size(long bytes) {
        if (bytes >= 1_000_000_000) return String.format(Locale.ROOT, "%.1f GB", bytes / 1e9);
        return bytes < 1_000_000
                ? "%.0f kB".formatted(Math.ceil(bytes / 1e3))
                : String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
    }

    public long percent(double fraction) {
        return Math.round(100 * fraction);
    }

    public static String state(String state, boolean cancelRequested) {
        return cancelRequested && state.equals("RUNNING") ? "stopping" : word(state);
    }

    /** Trade words for the states of runs, stacks and files. */
    public static String word(String state) {
        return switch (state) {
            case "READY" -> "waiting";
            case "QUARANTINED" -> "quarantined";
            case "SEEN" -> "arriving";
            case "STABLE" -> "being read";
            case "SWEEP" -> "in the sweep";
            case "STRAY" -> "set aside";
            case "INCOMPLETE" -> "incomplete";
            case "REJECTED" -> "not a frame";
            case "ASIDE" -> "set aside";
            case "SLATE" -> "label";
            case "TARGET" -> "card";
            case "RAW" -> "raw, kept";
            case "ACCEPTED" -> "taken in";
            case "WHOLE" -> "whole";
            case "ASKING" -> "asks";
            case "UNKNOWN" -> "not judged";
            default -> state.toLowerCase(Locale.ROOT);
        };
    }

    /** A mark in front of a state, so that colour never says it alone. */
    public static String mark(@Nullable String state) {
        return switch (state == null ? "" : state) {
            case "ACCEPT", "SWEEP", "ACCEPTED", "PUBLISHED", "SEALED", "WHOLE" -> "✓";
            case "LOOK", "INCOMPLETE", "HELD" -> "!";
            case "ASKING" -> "?";
            case "RESHOOT", "FAILED", "QUARANTINED", "REJECTED", "MISSING" -> "✕";
            case "STRAY", "ASIDE", "CANCELLED", "SUPERSEDED" -> "–";
            default -> "·";
        };
    }

    /** The word at the table, as large as it can be said. */
    public static String mood(String mood) {
        return switch (mood) {
            case "SHOOTING" -> "Shooting";
            case "WHOLE" -> "Whole";
            case "MISSING" -> "Not whole";
            case "ASKING" -> "Which subject?";
            default -> "Sealed";
        };
    }

    public static String verdict(String verdict) {
        return switch (verdict) {
            case "ACCEPT" -> "Accept";
            case "LOOK" -> "Look closer";
            case "RESHOOT" -> "Reshoot";
            default -> verdict;
        };
    }

    /** The reason that an audit entry's details give, if they give one. */
    public static String reason(String body) {
        String reason = JSON.readTree(body).path("reason").asString("");
        return reason.isEmpty() ? "" : ": " + reason;
    }

    /** An audit kind such as {@code run.READY-RUNNING}. */
    public static String act(String kind) {
        String what = kind.substring(kind.indexOf('.') + 1);
        int dash = what.indexOf('-');
        String about = kind.startsWith("run.") ? "Run" : "Stack";
        if (dash < 0
                || what.startsWith("ON-")
                || what.startsWith("OFF-")
                || what.startsWith("CANCEL-")
                || what.startsWith("SENT-")) {
            return about + " " + what.toLowerCase(Locale.ROOT).replace('-', ' ');
        }
        return about + ": " + word(what.substring(0, dash)) + " → " + word(what.substring(dash + 1));
    }
}
