package org.stook.app.sorting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stook.app.station.StationSettings.Folders;
import org.stook.app.station.StationSettings.Slates;
import org.stook.app.station.StationSettings.Splitting;

class SorterTest {
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
        List<Group> groups = sort(Slates.FIRST);
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).sweep()).hasSize(14);
    }

    @Test
    void framesForAGapOfASealedStackMakeItsNextVersion() {
        sweep(1, 12);
        List<Shot> sealed = List.copyOf(shots);
        shots.clear();
        wait(90);
        sweep(1, 2);
        List<Group> groups = Sorter.sort(new Sorter.Sealed(17, sealed), shots, rules(Slates.FIRST), true)
                .groups();
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).stack()).isEqualTo(17);
        assertThat(groups.get(0).fresh()).hasSize(2);
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
    void oneOrTwoFramesAtTheEndWaitForWhatComes() {
        slate("HC-1");
        sweep(1, 5);
        wait(60);
        sweep(2, 2);
        Sorter.Sorted sorted = Sorter.sort(null, shots, rules(Slates.NONE), false);
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
        return Sorter.sort(null, shots, rules(slates), false).groups();
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

    private void shoot(int picture, List<Shot.Code> codes, int unread, String blank) {
        clock = clock.plusSeconds(1);
        int number = shots.size() + 1;
        float[] thumbnail = new float[48 * 32];
        SplittableRandom random = new SplittableRandom(picture);
        SplittableRandom grain = new SplittableRandom(number);
        for (int i = 0; i < thumbnail.length; i++) {
            thumbnail[i] = (float) (random.nextDouble() + 0.1 * grain.nextDouble());
        }
        if (!blank.isEmpty()) Arrays.fill(thumbnail, 0);
        shots.add(new Shot(
                number,
                number + ".jpg",
                clock,
                new Shot.Setting("body 1", "600 x 400", "1/60 f/4"),
                new Shot.Sight(thumbnail, codes, unread, blank),
                false));
    }
}
