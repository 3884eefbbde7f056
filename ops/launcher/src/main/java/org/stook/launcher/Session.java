package org.stook.launcher;

import java.io.IOException;
import java.util.function.Consumer;

/** A studio that is stopped when this process is asked to end, be it by Ctrl-C or by SIGTERM. */
public final class Session {
    /** What is done with a running studio. */
    public interface Use {
        /** @return the exit code */
        int with(Studio studio) throws IOException, InterruptedException;
    }

    private final StudioPlan plan;
    private final Consumer<String> say;

    public Session(StudioPlan plan, Consumer<String> say) {
        this.plan = plan;
        this.say = say;
    }

    /** Starts the studio, uses it and stops it, whatever happens in between. */
    public int run(Use use) throws IOException, InterruptedException {
        Studio studio = new Studio(plan, say);
        Thread stopper = new Thread(() -> close(studio), "stopper");
        Runtime.getRuntime().addShutdownHook(stopper);
        try {
            studio.start();
            return use.with(studio);
        } finally {
            studio.close();
            forget(stopper);
        }
    }

    private void close(Studio studio) {
        try {
            studio.close();
        } catch (IOException e) {
            say.accept("stopping failed: " + e.getMessage());
        }
    }

    private static void forget(Thread stopper) {
        try {
            Runtime.getRuntime().removeShutdownHook(stopper);
        } catch (IllegalStateException e) {
            // The process is ending already, and the hook is what ends it.
        }
    }
}
