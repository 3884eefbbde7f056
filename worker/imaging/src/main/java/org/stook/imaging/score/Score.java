package org.stook.imaging.score;

import java.util.List;

/**
 * A composite's score: its parts, and no more certainty than the worst of them. Uncalibrated: the points are limits set
 * by common practice, not a probability of passing anyone's quality control.
 *
 * @param total the least points of any part, 0 to 100
 * @param verdict the worst of any part
 * @param parts in a fixed order
 */
public record Score(int total, Verdict verdict, List<Part> parts) {
    static Score of(List<Part> parts) {
        int total = parts.stream().mapToInt(Part::points).min().orElse(0);
        Verdict verdict = parts.stream().map(Part::verdict).reduce(Verdict.ACCEPT, Verdict::orWorse);
        return new Score(total, verdict, List.copyOf(parts));
    }
}
