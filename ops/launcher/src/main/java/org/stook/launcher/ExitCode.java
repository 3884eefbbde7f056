package org.stook.launcher;

/** How this program ends. Stopped by Ctrl-C or SIGTERM it ends with 130 or 143, after everything it started has ended. */
public final class ExitCode {
    /** What was asked for is done. */
    public static final int ENDED = 0;
    /** It could not start or not go on; a sentence on standard error says why. */
    public static final int FAILED = 1;
    /** The command line is wrong. */
    public static final int USAGE = 2;
    /** The demo's composites were not all published within its time limit. */
    public static final int NOT_PUBLISHED = 3;

    private ExitCode() {}
}
