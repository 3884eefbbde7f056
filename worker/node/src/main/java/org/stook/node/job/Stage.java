package org.stook.node.job;

import java.util.Locale;

/** The steps of the job in their order, and how much of a run's time each takes as a rule. */
enum Stage {
    SURVEY(0.15),
    REGISTER(0.30),
    BLEND(0.40),
    FINISH(0.08),
    SCORE(0.04),
    PUBLISH(0.03);

    private final double share;

    Stage(double share) {
        this.share = share;
    }

    String step() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** How much of the run is done when this part of the stage is. */
    double ofRun(double part) {
        double before = 0;
        for (Stage stage : values()) {
            if (stage == this) {
                break;
            }
            before += stage.share;
        }
        return Math.min(1, before + share * Math.max(0, Math.min(1, part)));
    }
}
