package org.stook.launcher;

import java.io.IOException;

/** The studio could not be started or kept running; the message says what was found and what to do. */
public final class LaunchFailure extends IOException {
    private static final long serialVersionUID = 1L;

    public LaunchFailure(String message) {
        super(message);
    }

    LaunchFailure(String message, Throwable cause) {
        super(message, cause);
    }
}
