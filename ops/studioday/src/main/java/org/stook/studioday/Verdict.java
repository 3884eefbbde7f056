package org.stook.studioday;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Holds what the service found against the script. */
final class Verdict {
    private final Findings findings;
    private final Map<Integer, Piece> pieces = new HashMap<>();
    private final Map<String, Truth> truths = new HashMap<>();
    private final Map<Long, Integer> majority = new HashMap<>();
    private final List<String> misses = new ArrayList<>();

    Verdict(Map<String, List<Piece>> stations, Findings findings) {
        this.findings = findings;
        stations.forEach((station, all) -> all.forEach(piece -> {
            pieces.put(piece.number(), piece);
            piece.drops().forEach(drop -> truths.put(station + ":" + drop.path(), drop.truth()));
        }));
        count().forEach((stack, counts) -> majority.put(
                stack,
                counts.entrySet().stream()
                        .max(Map.Entry.<Integer, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                        .orElseThrow()
                        .getKey()));
    }

    private Map<Long, Map<Integer, Integer>> count() {
        Map<Long, Map<Integer, Integer>> counts = new HashMap<>();
        truths.forEach((path, truth) -> {
            Findings.Found found = findings.files().get(path);
            if (found != null && found.stack() != null && truth.kind() == Truth.Kind.SWEEP) {
                counts.computeIfAbsent(found.stack(), s -> new HashMap<>()).merge(truth.stack(), 1, Integer::sum);
            }
        });
        return counts;
    }

    private Piece piece(int number) {
        return java.util.Objects.requireNonNull(pieces.get(number));
    }

    List<Line> lines() {
        List<Line> lines = new ArrayList<>();
        long lost = truths.keySet().stream()
                .filter(path -> !findings.files().containsKey(path))
                .count();
        lines.add(new Line("stacks shot", "" + pieces.size(), ">= 120", pieces.size() >= 120));
        lines.add(new Line("files written", "" + truths.size(), "", true));
        lines.add(new Line("files lost", "" + lost, "0", lost == 0));
        lines.add(doubled());
        lines.add(rightStack());
        lines.addAll(strays());
        lines.add(names());
        lines.add(asking());
        return lines;
    }

    private Line doubled() {
        long runs = findings.stacks().stream().filter(s -> s.openRuns() > 1).count();
        Set<String> subjects = new HashSet<>();
        long twice = findings.stacks().stream()
                .filter(s -> s.state().equals("SEALED"))
                .filter(s -> !subjects.add(s.subject()))
                .count();
        return new Line("stacks or runs doubled", "" + (runs + twice), "0", runs + twice == 0);
    }

    private Line rightStack() {
        long all = 0;
        long right = 0;
        Map<Integer, Long> home = new HashMap<>();
        count().forEach((stack, counts) -> {
            int piece = majority.getOrDefault(stack, -1);
            home.merge(
                    piece,
                    stack,
                    (a, b) -> count().getOrDefault(a, Map.of()).getOrDefault(piece, 0)
                                    >= count().getOrDefault(b, Map.of()).getOrDefault(piece, 0)
                            ? a
                            : b);
        });
        for (var entry : truths.entrySet()) {
            if (entry.getValue().kind() != Truth.Kind.SWEEP) continue;
            all++;
            Findings.Found found = findings.files().get(entry.getKey());
            Long own = home.get(entry.getValue().stack());
            if (found != null && own != null && own.equals(found.stack())) right++;
            else
                misses.add(entry.getKey() + " of "
                        + piece(entry.getValue().stack()).label() + " is " + found);
        }
        double share = 100.0 * right / Math.max(1, all);
        return new Line("frames in the right stack", percent(share) + " of " + all, ">= 99 %", share >= 99);
    }

    private List<Line> strays() {
        long truly = 0;
        long hit = 0;
        long said = 0;
        for (var entry : findings.files().entrySet()) {
            Truth truth = truths.get(entry.getKey());
            boolean isStray = truth != null && truth.kind() == Truth.Kind.STRAY;
            boolean setAside = entry.getValue().state().equals("STRAY");
            if (isStray) truly++;
            if (setAside) said++;
            if (isStray && setAside) hit++;
            if (isStray != setAside) misses.add(entry.getKey() + " is " + truth + ", found " + entry.getValue());
        }
        double precision = said == 0 ? 1 : (double) hit / said;
        double recall = truly == 0 ? 1 : (double) hit / truly;
        return List.of(
                new Line("strays, precision", ratio(precision) + " of " + said, ">= 0.97", precision >= 0.97),
                new Line("strays, recall", ratio(recall) + " of " + truly, ">= 0.97", recall >= 0.97));
    }

    /** A stack under the name of another subject is the one thing that must never be. */
    private Line names() {
        long wrong = 0;
        for (Findings.Stack stack : findings.stacks()) {
            Integer piece = majority.get(stack.id());
            boolean named = stack.subject().startsWith("HC-");
            if (piece == null || !named) continue;
            if (!stack.subject().equals(piece(piece).subject())) {
                wrong++;
                misses.add("stack " + stack.id() + " is named " + stack.subject() + ", is "
                        + piece(piece).label());
            }
        }
        return new Line("stacks under a wrong name", "" + wrong, "0", wrong == 0);
    }

    private Line asking() {
        Set<Integer> asked = findings.stacks().stream()
                .filter(s -> s.asks() != null && s.state().equals("COLLECTING"))
                .map(s -> majority.getOrDefault(s.id(), -1))
                .collect(Collectors.toSet());
        long due = pieces.values().stream().filter(p -> !p.readable()).count();
        long met = pieces.values().stream()
                .filter(p -> !p.readable() && asked.contains(p.number()))
                .count();
        return new Line(
                "stacks that ask for their name",
                "%d, %d of %d due".formatted(asked.size(), met, due),
                "all due",
                met == due);
    }

    /** What went wrong, one a line. */
    List<String> misses() {
        return misses;
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.2f %%", share);
    }

    private static String ratio(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
