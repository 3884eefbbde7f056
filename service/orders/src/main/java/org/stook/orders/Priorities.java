package org.stook.orders;

/** Priorities of runs, 0 to 100; the higher goes first. Nothing running is ever interrupted for them. */
public final class Priorities {
    /** The subject is still mounted. */
    public static final int ON_TABLE = 100;

    /** As far as waiting can lift a run: never before a mounted subject. */
    public static final int AGED = 90;

    public static final int NORMAL = 50;

    /** Re-runs of old stacks. */
    public static final int BACKLOG = 20;

    private Priorities() {}
}
