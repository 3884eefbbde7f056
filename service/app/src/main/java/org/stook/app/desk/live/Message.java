package org.stook.app.desk.live;

import java.nio.charset.StandardCharsets;

/**
 * A server-sent event as it goes over the line (WHATWG HTML, 9.2.6), made once for all pages that get it.
 *
 * @param event that the page listens for
 * @param text what it says, by which it is told from another
 */
record Message(String event, String text, byte[] bytes) {
    static Message of(String event, String text) {
        StringBuilder out =
                new StringBuilder(text.length() + 64).append("event:").append(event);
        // Even one that says nothing has a line of data: without one it is no event.
        for (String line : text.split("\n", -1)) out.append("\ndata:").append(line);
        return new Message(event, text, out.append("\n\n").toString().getBytes(StandardCharsets.UTF_8));
    }

    /** A line that says nothing; it fails if nobody is there any more. */
    static Message sign() {
        return new Message("", "", ":\n\n".getBytes(StandardCharsets.UTF_8));
    }
}
