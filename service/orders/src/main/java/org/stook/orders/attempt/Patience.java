package org.stook.orders.attempt;

import java.time.Duration;
import org.springframework.core.retry.RetryOperations;
import org.springframework.core.retry.RetryPolicy;
import org.springframework.core.retry.RetryTemplate;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.dao.RecoverableDataAccessException;
import org.springframework.dao.TransientDataAccessException;
import org.springframework.transaction.TransactionException;

/** How long a worker waits for a database that does not answer before it gives up minutes of work. */
final class Patience {
    /** With the pauses below, five minutes. */
    private static final long TRIES = 23;

    private Patience() {}

    static RetryOperations forAnOutage() {
        return of(TRIES, Duration.ofSeconds(1));
    }

    /** Pauses that double from the first up to 15 times as much. */
    static RetryOperations of(long tries, Duration first) {
        return new RetryTemplate(RetryPolicy.builder()
                .maxRetries(tries)
                .delay(first)
                .multiplier(2)
                .maxDelay(first.multipliedBy(15))
                .includes(
                        TransactionException.class,
                        DataAccessResourceFailureException.class,
                        RecoverableDataAccessException.class,
                        TransientDataAccessException.class)
                .build());
    }
}
