package org.stook.drills;

import java.io.PrintStream;
import java.util.List;
import org.stook.drills.check.Result;

/** Results as a table. */
final class Table {
    private static final String LINE =
            "| %-12s | %6s | %6s | %5s | %9s | %11s | %6s | %8s | %7s | %6s | %10s | %6s | %-5s |%n";

    private Table() {}

    static void print(List<Result> results, PrintStream out) {
        out.printf(
                LINE,
                "drill",
                "s",
                "faults",
                "runs",
                "published",
                "quarantined",
                "failed",
                "attempts",
                "refused",
                "deaths",
                "takeover s",
                "spared",
                "sound");
        for (Result r : results) {
            out.printf(
                    LINE,
                    r.drill(),
                    r.seconds(),
                    r.faults(),
                    r.runs(),
                    r.published(),
                    r.quarantined(),
                    r.failed(),
                    r.attempts(),
                    r.refused(),
                    r.deaths(),
                    "%.1f".formatted(r.takeover()),
                    r.spared(),
                    r.sound() ? "yes" : "NO");
        }
        out.printf(
                "in all: %d faults, %d runs, %d published%n",
                results.stream().mapToInt(Result::faults).sum(),
                results.stream().mapToInt(Result::runs).sum(),
                results.stream().mapToInt(Result::published).sum());
        for (Result r : results) {
            if (r.contents() > 1)
                out.println(r.drill() + ": the same frames gave " + r.contents() + " different composites");
            r.violations().forEach(v -> out.println(r.drill() + ": " + v));
        }
        out.flush();
    }
}
