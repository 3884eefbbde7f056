package org.stook.app.sorting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.app.station.StationSettings.Folders;
import org.stook.app.station.StationSettings.Slates;
import org.stook.app.station.StationSettings.Splitting;

/** A day of stacks that come in bit by bit and disordered, sorted anew at each bit, complete ones sealed meanwhile. */
class DayTest {
    private static final int STACKS = 60;
    private final Map<Long, Integer> truth = new HashMap<>();
    private final Set<Long> strays = new HashSet<>();
    private final Set<Integer> nameless = new HashSet<>();
    private LocalDateTime clock = LocalDateTime.of(2026, 3, 2, 9, 0);
    private long files;

    @ParameterizedTest
    @CsvSource({"FIRST, 1", "FIRST, 2", "FIRST, 3", "LAST, 1", "LAST, 2", "LAST, 3", "NONE, 1", "NONE, 2"})
    void everyFrameFindsItsStackAndNoStackAWrongName(Slates slates, long seed) {
        List<Shot> day = day(slates, new SplittableRandom(seed));
        List<Shot> pending = new ArrayList<>();
        List<Sorter.Sealed> sealed = new ArrayList<>();
        Map<Long, String> names = new HashMap<>();
        Set<Long> aside = new HashSet<>();
        SplittableRandom random = new SplittableRandom(seed);
        Splitting rules = new Splitting(Folders.STREAM, slates, Duration.ofSeconds(30), true, true);
        for (int at = 0; at < day.size(); ) {
            int next = Math.min(day.size(), at + random.nextInt(1, 9));
            pending.addAll(day.subList(at, next));
            at = next;
            boolean ended = at == day.size();
            for (Group group : Sorter.sort(sealed, pending, rules, ended).groups()) {
                Label label = Label.of(group.slates(), Map.of(), slates != Slates.NONE);
                boolean complete = group.closed() || ended;
                if (group.stack() != null ? !group.isUnchanged() && !complete : !complete || label.question() != null) {
                    continue;
                }
                pending.removeAll(group.fresh());
                group.strays().forEach(s -> aside.add(s.shot().file()));
                if (group.sweep().size() < 2) continue;
                long id = group.stack() != null ? group.stack() : 1000L + names.size();
                sealed.removeIf(s -> s.stack() == id);
                List<Shot> sweep = new ArrayList<>(group.sweep());
                sweep.sort(Shot.BY_TIME);
                sealed.add(new Sorter.Sealed(id, sweep));
                names.putIfAbsent(id, String.valueOf(label.subject()));
            }
        }
        Set<Integer> found = new HashSet<>();
        for (Sorter.Sealed stack : sealed) {
            Set<Integer> pieces = new HashSet<>();
            stack.sweep().forEach(shot -> pieces.add(truth.getOrDefault(shot.file(), -1)));
            assertThat(pieces).as("pieces in %s", shown(stack)).hasSize(1).doesNotContain(-1);
            int piece = pieces.iterator().next();
            assertThat(found.add(piece)).as("piece %s in one stack", piece).isTrue();
            if (slates != Slates.NONE) assertThat(names.get(stack.stack())).isEqualTo("HC-" + piece);
        }
        Set<Integer> due = new HashSet<>();
        for (int i = 0; i < STACKS; i++) if (slates == Slates.NONE || !nameless.contains(i)) due.add(i);
        assertThat(found).containsExactlyInAnyOrderElementsOf(due);
        assertThat(strays).containsAll(aside);
    }

    private List<Shot> day(Slates slates, SplittableRandom random) {
        List<Shot> day = new ArrayList<>();
        for (int i = 0; i < STACKS; i++) {
            List<Shot> piece = piece(i, slates, random);
            if (random.nextInt(4) == 0) Collections.shuffle(piece, new Random(random.nextInt()));
            day.addAll(piece);
            clock = clock.plusSeconds(random.nextInt(40, 120));
        }
        return day;
    }

    private List<Shot> piece(int number, Slates slates, SplittableRandom random) {
        List<Shot> shots = new ArrayList<>();
        // Few kinds of pieces: many look the same.
        int picture = random.nextInt(4);
        boolean torn = random.nextInt(12) == 0;
        boolean forgotten = random.nextInt(20) == 0;
        if (torn || forgotten) nameless.add(number);
        if (slates == Slates.FIRST && !forgotten) shots.add(label(number, torn, random));
        if (random.nextInt(4) == 0) shots.add(stray(shoot(1000 + (int) files, List.of(), 0, "")));
        int frames = random.nextInt(7, 12);
        for (int f = 0; f < frames; f++) {
            Shot shot = shoot(picture, List.of(), 0, "");
            truth.put(shot.file(), number);
            shots.add(shot);
            if (random.nextInt(30) == 0) shots.add(stray(shoot(700, List.of(), 0, "is black")));
            if (random.nextInt(40) == 0) shots.add(stray(shoot(1000 + (int) files, List.of(), 0, "")));
        }
        if (random.nextInt(8) == 0) {
            clock = clock.plusSeconds(35);
            Shot more = shoot(picture, List.of(), 0, "");
            truth.put(more.file(), number);
            shots.add(more);
        }
        if (slates == Slates.LAST && !forgotten) shots.add(label(number, torn, random));
        return shots;
    }

    private List<String> shown(Sorter.Sealed stack) {
        return stack.sweep().stream()
                .map(shot -> truth.getOrDefault(shot.file(), -1) + " at " + shot.time())
                .toList();
    }

    private Shot stray(Shot shot) {
        strays.add(shot.file());
        return shot;
    }

    private Shot label(int number, boolean torn, SplittableRandom random) {
        clock = clock.plusSeconds(random.nextInt(2, 10));
        Shot label = torn
                ? shoot(800 + number, List.of(), 1, "")
                : shoot(900 + number, List.of(new Shot.Code("QR", "HC-" + number)), 0, "");
        clock = clock.plusSeconds(random.nextInt(2, 10));
        return label;
    }

    private Shot shoot(int picture, List<Shot.Code> codes, int unread, String blank) {
        clock = clock.plusSeconds(1);
        return Shots.shot(
                ++files,
                clock,
                new Shot.Sight(Shots.thumbnail(picture, files, blank), new float[0], codes, unread, blank));
    }
}
