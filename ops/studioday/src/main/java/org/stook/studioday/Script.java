package org.stook.studioday;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.bracket.Rig;
import org.stook.scenes.file.Camera;
import org.stook.scenes.optics.Lens;

/** What is shot at one station on the day, from a seed. */
final class Script {
    private final SplittableRandom random;
    private final List<Roll.Shots> roll;
    private final Table first;
    private final Table second;
    private final boolean labelLast;

    /** @param labelLast whether this station shoots the label after the sweep */
    Script(long seed, List<Roll.Shots> roll, String prefix, boolean labelLast) {
        this.random = new SplittableRandom(seed);
        this.roll = roll;
        this.labelLast = labelLast;
        OffsetDateTime nine = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");
        Lens lens = Rig.USUAL.lens();
        first = new Table(Camera.USUAL.withSerial("TB" + seed), lens, prefix + "A", nine);
        second = new Table(Camera.USUAL.withSerial("TC" + seed), lens, prefix + "B", nine.plusSeconds(3));
    }

    /** @param from number of the first piece */
    List<Piece> pieces(int from, int count) {
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < count; i++) pieces.add(piece(from + i));
        return pieces;
    }

    private Piece piece(int number) {
        Table table = random.nextInt(5) == 0 ? second : first;
        String subject = "HC-%04d".formatted(2000 + number);
        String view = random.nextInt(4) == 0 ? (random.nextBoolean() ? "dorsal" : "ventral") : "";
        // One label in eighteen is torn, one in thirty forgotten.
        boolean torn = random.nextInt(18) == 0;
        boolean forgotten = !torn && random.nextInt(30) == 0;
        boolean folder = random.nextInt(10) == 0;
        String label = view.isEmpty() ? subject : subject + "/" + view;
        List<Drop> drops = new ArrayList<>();
        Roll.Shots shots = roll.get(random.nextInt(roll.size()));
        if (!labelLast && !forgotten && !folder) slate(table, label, torn, number, drops);
        sweep(table, shots, number, drops);
        if (labelLast && !forgotten && !folder) slate(table, label, torn, number, drops);
        table.pause(random.nextDouble(40, 120));
        if (folder) {
            List<Drop> inside = new ArrayList<>();
            drops.forEach(d -> inside.add(new Drop(subject + "/" + d.path(), d.truth(), d.content(), d.how())));
            return new Piece(number, subject, "", true, inside);
        }
        return new Piece(number, subject, view, !torn && !forgotten, disorder(drops));
    }

    private void slate(Table table, String label, boolean torn, int number, List<Drop> drops) {
        Picture picture = SlatePicture.of(label, Roll.width(), Roll.height(), random, torn);
        drops.add(table.shoot(picture, new Truth(Truth.Kind.SLATE, number), Drop.How.AT_ONCE));
        table.pause(random.nextDouble(3, 12));
    }

    private void sweep(Table table, Roll.Shots shots, int number, List<Drop> drops) {
        Truth stray = new Truth(Truth.Kind.STRAY, number);
        if (random.nextInt(5) == 0) {
            drops.add(table.shoot(shots.test(), stray, how()));
            table.pause(2);
        }
        if (random.nextInt(6) == 0) {
            drops.add(table.shoot(shots.card(), stray, how()));
            table.pause(2);
        }
        boolean gap = random.nextInt(10) == 0;
        boolean raw = random.nextInt(12) == 0;
        for (int i = 0; i < Roll.FRAMES; i++) {
            if (gap && i == 4) continue;
            Drop frame = table.shoot(shots.sweep().get(i), new Truth(Truth.Kind.SWEEP, number), how());
            drops.add(frame);
            if (raw) drops.add(table.rawOf(frame, number));
            mishap(table, shots, i, number, frame, drops);
        }
        if (gap) {
            table.pause(35);
            drops.add(table.shoot(shots.sweep().get(4), new Truth(Truth.Kind.SWEEP, number), how()));
        }
    }

    private void mishap(Table table, Roll.Shots shots, int i, int number, Drop frame, List<Drop> drops) {
        Truth stray = new Truth(Truth.Kind.STRAY, number);
        switch (random.nextInt(90)) {
            case 0, 1 -> drops.add(table.shoot(shots.black(), stray, how()));
            case 2, 3 -> drops.add(table.copyOf(frame, number));
            case 4 -> drops.add(table.shoot(shots.small(), stray, how()));
            case 5 -> drops.add(table.cutShort(frame, number));
            case 6 -> drops.add(table.text(number));
            default -> {}
        }
    }

    private Drop.How how() {
        int chance = random.nextInt(12);
        return chance < Drop.How.values().length ? Drop.How.values()[chance] : Drop.How.AT_ONCE;
    }

    /** Files do not always arrive in the order in which they were shot. */
    private List<Drop> disorder(List<Drop> drops) {
        if (random.nextInt(6) == 0) Collections.shuffle(drops, new Random(random.nextInt()));
        return drops;
    }
}
