package org.stook.node.publish;

/**
 * Named points at which drills end the process as a power cut would: no shutdown hook, no finally. System property
 * {@code stook.failpoint} names the one to die at; without it nothing happens.
 */
public final class Failpoint {
    /** As after SIGKILL. */
    private static final int KILLED = 137;

    private Failpoint() {}

    public static void hit(String name) {
        if (name.equals(System.getProperty("stook.failpoint"))) {
            Runtime.getRuntime().halt(KILLED);
        }
    }
}
