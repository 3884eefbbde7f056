package org.stook.imaging.registration;

/** How much a placement may do. Each model holds the one before. */
public enum Model {
    /** Shift, turn, one scale: what focus breathing and a firm stand give. */
    SIMILARITY(4),
    /** Also two shears: a sensor or lens that tilts as it moves, rolling lines. */
    AFFINE(6),
    /** Also two perspective terms: a camera that turned. */
    PROJECTIVE(8);

    private final int parameters;

    Model(int parameters) {
        this.parameters = parameters;
    }

    /** Free numbers of one placement. */
    public int parameters() {
        return parameters;
    }
}
