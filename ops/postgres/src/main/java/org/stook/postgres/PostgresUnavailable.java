package org.stook.postgres;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.util.Locale;

/** The server could not be started or stopped; the message says what was found and what to do. */
public final class PostgresUnavailable extends IOException {
    private static final long serialVersionUID = 1L;

    PostgresUnavailable(String message) {
        super(message);
    }

    PostgresUnavailable(String message, Throwable cause) {
        super(message, cause);
    }

    /** The same failure in words an operator can act on; {@code doing} completes "while ...". */
    static PostgresUnavailable of(String doing, IOException e) {
        if (e instanceof PostgresUnavailable known) {
            return known;
        }
        String where = e instanceof FileSystemException f && f.getFile() != null ? " (" + f.getFile() + ")" : "";
        String message = String.valueOf(e.getMessage());
        if (message.toLowerCase(Locale.ROOT).contains("no space left")) {
            return new PostgresUnavailable("the disk is full" + where + ", found while " + doing + "; free space", e);
        }
        return new PostgresUnavailable("failed while " + doing + ": " + message, e);
    }
}
