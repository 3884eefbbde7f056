package org.stook.app.desk;

import org.springframework.http.HttpStatus;
import org.springframework.web.server.ResponseStatusException;

/** An order that cannot be followed, in a sentence for whoever gave it. */
final class Refusal extends ResponseStatusException {
    private static final long serialVersionUID = 1;

    private Refusal(HttpStatus status, String sentence) {
        super(status, sentence);
    }

    static Refusal notFound(String sentence) {
        return new Refusal(HttpStatus.NOT_FOUND, sentence);
    }

    static Refusal conflict(String sentence) {
        return new Refusal(HttpStatus.CONFLICT, sentence);
    }

    static Refusal outOfRange(String sentence) {
        return new Refusal(HttpStatus.REQUESTED_RANGE_NOT_SATISFIABLE, sentence);
    }

    static Refusal unfit(String sentence) {
        return new Refusal(HttpStatus.UNPROCESSABLE_CONTENT, sentence);
    }
}
