package org.stook.imaging.command;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import org.stook.imaging.composite.CannotCompose;
import picocli.CommandLine;

/** Turns what went wrong into one sentence on stderr and an exit code. */
final class Complaints {
    static final int CANNOT_COMPOSE = 3;
    static final int BAD_SETTINGS = 4;
    static final int CANNOT_READ_OR_WRITE = 5;

    private Complaints() {}

    static int report(Exception e, CommandLine line) {
        if (e instanceof CannotCompose) return say(line, sentence(e), CANNOT_COMPOSE);
        if (e instanceof IllegalArgumentException) return say(line, sentence(e), BAD_SETTINGS);
        if (e instanceof NoSuchFileException n)
            return say(line, "There is no file " + n.getFile(), CANNOT_READ_OR_WRITE);
        if (e instanceof AccessDeniedException a) {
            return say(line, "No permission for " + a.getFile(), CANNOT_READ_OR_WRITE);
        }
        if (e instanceof IOException) return say(line, sentence(e), CANNOT_READ_OR_WRITE);
        e.printStackTrace(line.getErr());
        return CommandLine.ExitCode.SOFTWARE;
    }

    private static String sentence(Exception e) {
        return e.getMessage() == null ? e.toString() : e.getMessage();
    }

    private static int say(CommandLine line, String sentence, int code) {
        line.getErr().println("stook-imaging: " + sentence);
        line.getErr().flush();
        return code;
    }
}
