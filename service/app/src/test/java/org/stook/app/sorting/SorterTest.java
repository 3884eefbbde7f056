package org.stook.app.sorting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stook.app.station.StationSettings.Folders;
import org.stook.app.station.StationSettings.Slates;
import org.stook.app.station.StationSettings.Splitting;

class SorterTest {
    private double focus = Double.NaN;
    private static final LocalDateTime NINE = LocalDateTime.of(2026, 3, 2, 9, 0);
    private final List<Shot> shots = new ArrayList<>();
    private LocalDateTime clock = NINE;

    @Test
    void aSlateBeginsAStackAndNamesIt() {
        slate("HC-1");
        sweep(1, 5);
        slate("HC-2");
        sweep(2, 6);
        List<Group> groups = sort(Slates.FIRST);
        assertThat(groups).extracting(g -> g.sweep().size()).containsExactly(5, 6);
        assertThat(groups).extracting(Group::closed).containsExactly(true, false);
        assertThat(groups).extracting(g -> subject(g, true)).containsExactly("HC-1", "HC-2");
    }

    @Test
    void aSlateEndsAStackWhereSlatesComeLast() {
        sweep(1, 5);
        slate("HC-1");
        sweep(2, 6);
        slate("HC-2");
        List<Group> groups = sort(Slates.LAST);
        assertThat(groups).extracting(g -> g.sweep().size()).containsExactly(5, 6);
        assertThat(groups).extracting(g -> subject(g, true)).containsExactly("HC-1", "HC-2");
    }

    @Test
    void anUnreadLabelBeginsAStackThatAsks() {
        slate("HC-1");
        sweep(1, 5);
        unreadLabel();
        sweep(2, 6);
        List<Group> groups = sort(Slates.FIRST);
        assertThat(groups).extracting(g -> g.sweep().size()).containsExactly(5, 6);
        assertThat(subject(groups.get(1), true)).isNull();
        assertThat(label(groups.get(1), true).question()).startsWith("the label on 7.jpg could not be read");
    }

    @Test
    void aSweepWithoutItsSlateNeverTakesTheNameOfTheOneBefore() {
        slate("HC-1");
        sweep(1, 5);
        wait(60);
        sweep(2, 6);
        List<Group> groups = sort(Slates.FIRST);
        assertThat(groups).extracting(g -> g.sweep().size()).containsExactly(5, 6);
        assertThat(label(groups.get(1), true).question()).contains("no frame of a label");
    }

    @Test
    void aPauseSeparatesStacksWithoutSlates() {
        sweep(1, 5);
        wait(45);
        sweep(1, 5);
        assertThat(sort(Slates.NONE)).extracting(g -> g.sweep().size()).containsExactly(5, 5);
    }

    @Test
    void framesShotForAGapJoinTheirSweep() {
        slate("HC-1");
        sweep(1, 12);
        wait(90);
        sweep(1, 2);
        List<Group> groups =
                Sorter.sort(List.of(), shots, rules(Slates.FIRST), true).groups();
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).sweep()).hasSize(14);
    }

    @Test
    void aFewFramesLikeTheSweepBeforeWaitUntilItIsClearWhetherMoreFollow() {
        slate("HC-1");
        sweep(1, 12);
        wait(90);
        sweep(1, 4);
        Sorter.Sorted waiting = Sorter.sort(List.of(), shots, rules(Slates.FIRST), false);
        assertThat(waiting.groups()).extracting(g -> g.sweep().size()).containsExactly(12);
        assertThat(waiting.open()).hasSize(4);
        sweep(1, 7);
        assertThat(sort(Slates.FIRST)).extracting(g -> g.sweep().size()).containsExactly(12, 11);
    }

    @Test
    void strayShotsBetweenTwoStacksGoToTheNearer() {
        sweep(1, 5);
        odd(71);
        wait(40);
        odd(72);
        sweep(2, 5);
        List<Group> groups = sort(Slates.NONE);
        assertThat(groups).extracting(g -> g.sweep().size()).containsExactly(5, 5);
        assertThat(groups).extracting(g -> g.strays().size()).containsExactly(1, 1);
    }

    @Test
    void anUnreadLabelAfterASweepIsThatSweepsWhereSlatesComeLast() {
        sweep(1, 5);
        unreadLabel();
        wait(60);
        sweep(2, 6);
        slate("HC-2");
        List<Group> groups = sort(Slates.LAST);
        assertThat(groups).extracting(g -> g.sweep().size()).containsExactly(5, 6);
        assertThat(groups).extracting(g -> subject(g, true)).containsExactly(null, "HC-2");
        assertThat(label(groups.get(0), true).question()).startsWith("the label on 6.jpg could not be read");
    }

    @Test
    void framesForAGapOfASealedStackMakeItsNextVersion() {
        sweep(1, 12);
        List<Shot> sealed = List.copyOf(shots);
        shots.clear();
        wait(90);
        sweep(1, 2);
        List<Group> groups = Sorter.sort(List.of(new Sorter.Sealed(17, sealed)), shots, rules(Slates.FIRST), true)
                .groups();
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).stack()).isEqualTo(17);
        assertThat(groups.get(0).fresh()).hasSize(2);
    }

    @Test
    void aLabelThatComesBeforeItsSweepIsNotTakenForTheSealedStacks() {
        sweep(1, 6);
        slate("HC-1");
        Sorter.Sealed sealed = new Sorter.Sealed(17, List.copyOf(shots.subList(0, 6)));
        shots.clear();
        wait(60);
        sweep(2, 5);
        slate("HC-2");
        List<Shot> late = new ArrayList<>(shots.subList(0, 5));
        shots.removeAll(late);
        Group alone = Sorter.sort(List.of(sealed), shots, rules(Slates.LAST), false)
                .groups()
                .get(0);
        assertThat(alone.stack()).isNull();
        shots.addAll(late);
        List<Group> groups =
                Sorter.sort(List.of(sealed), shots, rules(Slates.LAST), false).groups();
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).sweep()).hasSize(5);
        assertThat(subject(groups.get(0), true)).isEqualTo("HC-2");
    }

    @Test
    void whatComesLateFindsItsSealedStackInTheMiddleOfTheDay() {
        sweep(1, 6);
        wait(60);
        sweep(2, 6);
        wait(60);
        sweep(3, 6);
        Shot first = shots.get(6);
        Shot inside = shots.get(9);
        Sorter.Sealed one = new Sorter.Sealed(11, List.copyOf(shots.subList(0, 6)));
        Sorter.Sealed two = new Sorter.Sealed(12, List.of(shots.get(7), shots.get(8), shots.get(10), shots.get(11)));
        Sorter.Sealed three = new Sorter.Sealed(13, List.copyOf(shots.subList(12, 18)));
        List<Group> groups = Sorter.sort(List.of(one, two, three), List.of(first, inside), rules(Slates.NONE), false)
                .groups();
        assertThat(groups).extracting(Group::stack).containsExactly(12L);
        assertThat(groups.get(0).fresh()).containsExactly(first, inside);
    }

    @Test
    void aSweepOfAnotherPieceThatLooksAlikeIsNotMistakenForMoreOfTheSealedOne() {
        sweep(1, 9);
        slate("HC-1");
        Sorter.Sealed sealed = new Sorter.Sealed(17, List.copyOf(shots.subList(0, 9)));
        shots.clear();
        wait(12);
        sweep(1, 2);
        slate("HC-2");
        List<Group> groups =
                Sorter.sort(List.of(sealed), shots, rules(Slates.LAST), true).groups();
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).stack()).isNull();
        assertThat(groups.get(0).sweep()).hasSize(2);
    }

    @Test
    void testShotsAndBlackFramesAreSetAsideAndTheSweepGoesOn() {
        slate("HC-1");
        odd(77);
        sweep(1, 5);
        blank("is black");
        sweep(1, 4);
        odd(78);
        sweep(1, 3);
        List<Group> groups = sort(Slates.FIRST);
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).sweep()).hasSize(12);
        assertThat(groups.get(0).strays())
                .extracting(Group.Stray::reason)
                .containsExactly(
                        "2.jpg: shows another framing, subject or exposure than the sweep (a card, a test shot)",
                        "8.jpg: is black",
                        "13.jpg: shows another framing, subject or exposure than the sweep (a card, a test shot)");
    }

    @Test
    void aLabelBesideTheSubjectInEveryFrameIsNoSlate() {
        for (int i = 0; i < 6; i++) shoot(1, List.of(new Shot.Code("Data Matrix", "HC-9")), 0, "");
        List<Group> groups = sort(Slates.FIRST);
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).sweep()).hasSize(6);
        assertThat(groups.get(0).slates()).isEmpty();
    }

    @Test
    void theOrderOfArrivalDoesNotMatter() {
        slate("HC-1");
        sweep(1, 5);
        slate("HC-2");
        sweep(2, 6);
        List<String> straight = describe(sort(Slates.FIRST));
        for (int seed = 0; seed < 20; seed++) {
            Collections.shuffle(shots, new Random(seed));
            assertThat(describe(sort(Slates.FIRST))).isEqualTo(straight);
        }
    }

    @Test
    void aSweepShotOnceMoreIsAnotherStack() {
        slate("HC-1");
        focused(1, 0, 1, 2, 3, 4, 5, 6, 7);
        focused(1, 0.3, 1.3, 2.3, 3.3, 4.3, 5.3, 6.3);
        List<Group> groups = sort(Slates.FIRST);
        assertThat(groups).hasSize(2);
        assertThat(groups.get(0).sweep()).hasSize(8);
        assertThat(subject(groups.get(1), true)).as("nobody said whose it is").isNull();
    }

    @Test
    void neitherAGapNorFramesForItAreASecondSweep() {
        slate("HC-1");
        focused(1, 0, 1, 2, 3, 7, 8, 9, 10, 11, 12, 13, 14);
        focused(1, 3.8, 4.6, 5.4, 6.2);
        assertThat(sort(Slates.FIRST)).hasSize(1);
    }

    @Test
    void oneOrTwoFramesAtTheEndWaitForWhatComes() {
        slate("HC-1");
        sweep(1, 5);
        wait(60);
        sweep(2, 2);
        Sorter.Sorted sorted = Sorter.sort(List.of(), shots, rules(Slates.NONE), false);
        assertThat(sorted.groups()).hasSize(1);
        assertThat(sorted.open()).hasSize(2);
    }

    private static List<String> describe(List<Group> groups) {
        return groups.stream()
                .map(g -> g.slates().stream().map(Shot::name).toList() + " "
                        + g.sweep().stream().map(Shot::name).toList())
                .toList();
    }

    private static @Nullable String subject(Group group, boolean wanted) {
        return label(group, wanted).subject();
    }

    private static Label label(Group group, boolean wanted) {
        return Label.of(group.slates(), java.util.Map.of(), wanted);
    }

    private List<Group> sort(Slates slates) {
        return Sorter.sort(List.of(), shots, rules(slates), false).groups();
    }

    private static Splitting rules(Slates slates) {
        return new Splitting(Folders.STREAM, slates, Duration.ofSeconds(30), true, true);
    }

    private void wait(int seconds) {
        clock = clock.plusSeconds(seconds);
    }

    private void slate(String text) {
        shoot(900 + shots.size(), List.of(new Shot.Code("QR", text)), 0, "");
    }

    private void unreadLabel() {
        shoot(800, List.of(), 1, "");
    }

    private void odd(int picture) {
        shoot(picture, List.of(), 0, "");
    }

    private void blank(String what) {
        shoot(700, List.of(), 0, what);
    }

    private void sweep(int picture, int frames) {
        for (int i = 0; i < frames; i++) shoot(picture, List.of(), 0, "");
    }

    private void focused(int picture, double... places) {
        for (double place : places) {
            focus = place;
            shoot(picture, List.of(), 0, "");
        }
        focus = Double.NaN;
    }

    private void shoot(int picture, List<Shot.Code> codes, int unread, String blank) {
        clock = clock.plusSeconds(1);
        int number = shots.size() + 1;
        shots.add(Shots.shot(
                number,
                clock,
                new Shot.Sight(
                        Shots.thumbnail(picture, number, blank),
                        Shots.sharpness(focus, number),
                        codes,
                        unread,
                        blank)));
    }
}
