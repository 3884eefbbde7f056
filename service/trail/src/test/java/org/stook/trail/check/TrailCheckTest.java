package org.stook.trail.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stook.trail.Entry;
import org.stook.trail.SealedLeaf;
import org.stook.trail.merkle.Hash;

class TrailCheckTest {
    private final Trail trail = new Trail(40);

    private void replace(int id, Entry other) {
        trail.entries.set(id - 1, other);
    }

    private static Entry edited(Entry e) {
        return new Entry(e.id(), e.xid(), e.at(), "eve", e.kind(), e.subject(), e.body());
    }

    @Test
    void anUntouchedTrailIsProvenInFull() throws Exception {
        Findings findings = trail.check();
        assertThat(findings.bad()).isEmpty();
        assertThat(findings.proven())
                .contains(
                        "the leaves of 40 entries have the root of each of 4 heads",
                        "40 entries are what they were when they were sealed");
    }

    @Test
    void everyEditedEntryIsNamed() throws Exception {
        for (int id : List.of(7, 8, 31)) replace(id, edited(trail.entries.get(id - 1)));
        assertThat(trail.check().bad()).containsExactly("entries 7 to 8, 31 (3): not what was sealed (edited)");
    }

    @Test
    void everyDeletedEntryIsNamed() throws Exception {
        trail.entries.remove(39);
        trail.entries.remove(11);
        assertThat(trail.check().bad())
                .singleElement()
                .asString()
                .startsWith("entries 12, 40 (2): sealed, but not there");
    }

    @Test
    void aTruncatedTrailIsNamedAsARange() throws Exception {
        trail.entries.clear();
        assertThat(trail.check().bad()).singleElement().asString().startsWith("entries 1 to 40 (40): sealed");
    }

    @Test
    void anInsertedEntryIsNamed() throws Exception {
        Trail gapped = new Trail(20);
        gapped.seal(Trail.entry(22, 22));
        gapped.entries.add(20, Trail.entry(21, 21));
        for (int id = 23; id <= 31; id++) gapped.seal(Trail.entry(id, id));
        assertThat(gapped.check().bad()).singleElement().asString().startsWith("entry 21: there, but never sealed");
    }

    @Test
    void entriesInEachOthersPlacesAreNamed() throws Exception {
        Entry third = trail.entries.get(2);
        Entry ninth = trail.entries.get(8);
        replace(3, new Entry(3, ninth.xid(), ninth.at(), ninth.actor(), ninth.kind(), ninth.subject(), ninth.body()));
        replace(9, new Entry(9, third.xid(), third.at(), third.actor(), third.kind(), third.subject(), third.body()));
        assertThat(trail.check().bad())
                .containsExactly(
                        "entry 3: holds what was entry 9 (put in another order)",
                        "entry 9: holds what was entry 3 (put in another order)");
    }

    @Test
    void anOlderStateLacksWhatCameLaterAndDiffersInWhatFollowed() throws Exception {
        trail.entries.subList(25, 40).clear();
        trail.entries.add(Trail.entry(26, 99));
        assertThat(trail.check().bad())
                .containsExactly(
                        "entry 26: not what was sealed (edited)",
                        "entries 27 to 40 (14): sealed, but not there any more (deleted, cut off, or an older state was"
                                + " restored)");
    }

    @Test
    void changedLeavesDoNotFitTheHeads() throws Exception {
        trail.leaves.set(14, new SealedLeaf(15, Hash.empty()));
        assertThat(trail.check().bad())
                .anySatisfy(bad -> assertThat(bad).startsWith("the head over 20 entries of"))
                .anySatisfy(bad -> assertThat(bad).startsWith("entry 15: not what was sealed"));
    }

    @Test
    void leavesThatEndTooSoonAreNoticed() throws Exception {
        trail.leaves.subList(33, 40).clear();
        assertThat(trail.check().bad())
                .anySatisfy(bad -> assertThat(bad).contains("there are 33 leaves, but the last head"));
    }

    @Test
    void headsThatDoNotNameEachOtherAreNoticed() throws Exception {
        trail.heads.remove(1);
        assertThat(trail.check().bad()).singleElement().asString().startsWith("the head over 30 entries");
    }

    @Test
    void anEntryThatWasSealedOutOfTurnIsNoTamper() throws Exception {
        Trail slow = new Trail(9);
        slow.seal(Trail.entry(11, 11));
        slow.seal(Trail.entry(10, 10));
        for (int id = 12; id <= 20; id++) slow.seal(Trail.entry(id, id));
        assertThat(slow.check().bad()).isEmpty();
    }

    @Test
    void anEntryWithADateOfLongBeforeItsHeadIsNamed() throws Exception {
        Trail backdated = new Trail(30);
        backdated.seal(Trail.entry(31, 2));
        for (int id = 32; id <= 40; id++) backdated.seal(Trail.entry(id, id));
        assertThat(backdated.check().bad())
                .singleElement()
                .asString()
                .startsWith("entry 31: dated more than 10 minutes");
    }

    @Test
    void whatIsNewerThanTheLeavesIsNotProvenAndNotBad() throws Exception {
        trail.entries.add(Trail.entry(41, 41));
        Findings findings = trail.check();
        assertThat(findings.bad()).isEmpty();
        assertThat(findings.unproven()).contains("entry 41: newer than the leaves, not proven by them");
    }

    @Test
    void aTreeInAnotherOrderIsNamedPlaceByPlace() throws Exception {
        Findings findings = new Findings();
        Trail other = new Trail(40);
        List<SealedLeaf> turned = new ArrayList<>(other.leaves);
        other.leaves.set(4, turned.get(5));
        other.leaves.set(5, turned.get(4));
        new TreeCheck(findings).run(trail.leafSource(), other.leafSource());
        assertThat(findings.bad())
                .hasSize(2)
                .anySatisfy(bad -> assertThat(bad).startsWith("leaf 4 of the database's tree: found entry 6"));
    }
}
