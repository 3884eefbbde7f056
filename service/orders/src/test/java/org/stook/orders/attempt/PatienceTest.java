package org.stook.orders.attempt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.jdbc.datasource.DelegatingDataSource;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.springframework.transaction.CannotCreateTransactionException;
import org.stook.orders.RunId;
import org.stook.orders.Studio;

class PatienceTest {
    private static final Studio STUDIO = new Studio(PatienceTest.class);
    private final AtomicInteger down = new AtomicInteger();
    private final DelegatingDataSource flaky = new DelegatingDataSource(STUDIO.source) {
        @Override
        public java.sql.Connection getConnection() throws java.sql.SQLException {
            // Nothing listens on port 1: what a stopped database looks like.
            return down.getAndDecrement() > 0
                    ? new DriverManagerDataSource("jdbc:postgresql://127.0.0.1:1/x").getConnection()
                    : super.getConnection();
        }
    };
    private final Ledger ledger =
            new Ledger(flaky, new DataSourceTransactionManager(flaky), "w1", Patience.of(3, Duration.ofMillis(1)));

    @Test
    void anEndIsWrittenDownOnceTheDatabaseIsBack() {
        RunId run = STUDIO.run();
        new Claims(ledger).claim(run, "1");
        down.set(3);
        assertThat(new Endings(ledger).end(run, 1, new Outcome.Failed("X", "x")))
                .isEqualTo(new Next.Over());
        assertThat(STUDIO.state(run)).isEqualTo("FAILED");
    }

    @Test
    void patienceEnds() {
        RunId run = STUDIO.run();
        new Claims(ledger).claim(run, "1");
        down.set(4);
        assertThatThrownBy(() -> new Fence(ledger).publishing(run, 1, new StagedResult("s", "f", Studio.HASH)))
                .isInstanceOf(CannotCreateTransactionException.class);
    }
}
