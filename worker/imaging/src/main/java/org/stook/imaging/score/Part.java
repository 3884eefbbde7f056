package org.stook.imaging.score;

/**
 * One measure of a score.
 *
 * @param name stable, lower case
 * @param value as measured, in {@code unit}
 * @param unit of the value: "%", "px", "EV"
 * @param points 0 (worst) to 100
 * @param verdict this measure's own
 * @param sentence the reason, for a person
 */
public record Part(String name, double value, String unit, int points, Verdict verdict, String sentence) {

    /**
     * A measure for which less is better: 100 points at 0, 80 at {@code accept}, 50 at {@code look}, 0 at twice that.
     */
    static Part lessIsBetter(String name, double value, String unit, double accept, double look, String sentence) {
        double points;
        if (value <= accept) points = 100 - 20 * value / accept;
        else if (value <= look) points = 80 - 30 * (value - accept) / (look - accept);
        else points = Math.max(0, 50 - 50 * (value - look) / look);
        Verdict verdict = value <= accept ? Verdict.ACCEPT : value <= look ? Verdict.LOOK : Verdict.RESHOOT;
        return new Part(name, value, unit, (int) Math.round(points), verdict, sentence);
    }

    /** The same measure, but never a reason to shoot again by itself. */
    Part atWorstLook() {
        return verdict == Verdict.RESHOOT
                ? new Part(name, value, unit, Math.max(points, 50), Verdict.LOOK, sentence)
                : this;
    }
}
