package org.stook.imaging.command;

import java.io.PrintStream;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.composite.Progress;

/** Progress on one line of the terminal; says nothing where stderr is no terminal. */
final class StageLine implements Progress, AutoCloseable {
    private final @Nullable PrintStream terminal;
    private boolean open;

    private StageLine(@Nullable PrintStream terminal) {
        this.terminal = terminal;
    }

    /** Java tells of stdin and stdout together only; that is near enough to "a person watches". */
    static StageLine onTerminal() {
        return new StageLine(System.console() == null ? null : System.err);
    }

    @Override
    public void at(String stage, double fraction) {
        if (terminal == null) return;
        terminal.printf("\r%-10s %3.0f %%", stage, 100 * fraction);
        terminal.flush();
        open = true;
    }

    @Override
    public void close() {
        if (terminal != null && open) terminal.println();
        open = false;
    }
}
