package org.stook.studioday;

import java.util.ArrayList;
import java.util.List;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.bracket.Stills;
import org.stook.scenes.subject.Subject;
import org.stook.scenes.subject.Subjects;

/**
 * Rendered pictures, used again and again: what makes one stack differ from another here is not the piece but its label, its
 * times and its mess. Encoded, as a camera would write them.
 */
final class Roll {
    static final int FRAMES = 9;
    private static final int WIDTH = 420;
    private static final int HEIGHT = 280;

    /** One piece: its sweep and what else may be shot of it. */
    record Shots(List<Picture> sweep, Picture test, Picture card, Picture black, Picture small) {}

    private Roll() {}

    static int width() {
        return WIDTH;
    }

    static int height() {
        return HEIGHT;
    }

    static List<Shots> of(long seed, int pieces) {
        List<Shots> roll = new ArrayList<>();
        for (int i = 0; i < pieces; i++) {
            List<Subject> subjects = Subjects.pieces(seed + i);
            roll.add(shots(subjects.get(i % subjects.size()), seed + i));
        }
        return roll;
    }

    private static Shots shots(Subject subject, long seed) {
        BracketPlan plan = BracketPlan.of(WIDTH, HEIGHT, FRAMES, seed);
        Bracket bracket = Bracket.of(subject, plan);
        List<Picture> sweep = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) sweep.add(bracket.encoded(i));
        BracketPlan smaller = plan.withSize(WIDTH * 3 / 4, HEIGHT * 3 / 4);
        return new Shots(
                sweep,
                Stills.testShot(bracket).encoded(),
                Stills.card(Subjects.patchCard(seed), plan).encoded(),
                Stills.black(plan).encoded(),
                Bracket.of(subject, smaller).encoded(FRAMES / 2));
    }
}
