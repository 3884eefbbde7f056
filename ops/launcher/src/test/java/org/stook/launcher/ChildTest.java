package org.stook.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Deaths and restarts by a clock that the test turns. */
class ChildTest {
    private final Deque<FakeProcess> made = new ArrayDeque<>();
    private final List<String> said = new ArrayList<>();
    private Instant now = Instant.EPOCH;
    private boolean refused;

    private final Child child = new Child("worker-1", this::make, RestartPolicy.USUAL, said::add);

    private Process make() throws IOException {
        if (refused) throw new IOException("no more processes");
        made.add(new FakeProcess());
        return made.getLast();
    }

    @Test
    void aLivingChildIsLeftAlone() throws IOException {
        child.start(now);
        tendAfter(1000);
        assertThat(made).hasSize(1);
        assertThat(said).isEmpty();
    }

    @Test
    void aDeadChildIsStartedAgainAfterAPauseAndNotBefore() throws IOException {
        child.start(now);
        die();
        assertThat(said).containsExactly("worker-1 ended with code 137; it is started again in 1 s");
        tendAfter(0.9);
        assertThat(made).hasSize(1);
        tendAfter(0.1);
        assertThat(made).hasSize(2);
        assertThat(child.alive()).isTrue();
    }

    @Test
    void deathsInARowDoubleThePauseUpToHalfAMinute() throws IOException {
        child.start(now);
        List<Duration> pauses = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            Instant death = now;
            die();
            while (!child.alive()) tendAfter(0.5);
            pauses.add(Duration.between(death, now));
        }
        assertThat(pauses).extracting(Duration::toSeconds).containsExactly(1L, 2L, 4L, 8L, 16L, 30L, 30L, 30L);
    }

    @Test
    void aChildThatLivedForAMinuteBeginsAnew() throws IOException {
        child.start(now);
        for (int i = 0; i < 4; i++) {
            die();
            while (!child.alive()) tendAfter(1);
        }
        tendAfter(60);
        die();
        assertThat(said.get(said.size() - 1)).endsWith("started again in 1 s");
    }

    @Test
    void aStartThatIsRefusedIsTriedAgain() throws IOException {
        child.start(now);
        die();
        refused = true;
        tendAfter(1);
        assertThat(said.get(said.size() - 1)).isEqualTo("worker-1 could not be started: no more processes");
        refused = false;
        for (int i = 0; i < 4; i++) tendAfter(1);
        assertThat(child.alive()).isTrue();
    }

    private void die() {
        made.getLast().destroy();
        child.tend(now);
    }

    private void tendAfter(double seconds) {
        now = now.plusMillis((long) (seconds * 1000));
        child.tend(now);
    }

    /** A process that lives until it is asked to end. */
    private static final class FakeProcess extends Process {
        private boolean ended;

        @Override
        public OutputStream getOutputStream() {
            return OutputStream.nullOutputStream();
        }

        @Override
        public InputStream getInputStream() {
            return InputStream.nullInputStream();
        }

        @Override
        public InputStream getErrorStream() {
            return InputStream.nullInputStream();
        }

        @Override
        public int waitFor() {
            return exitValue();
        }

        @Override
        public int exitValue() {
            if (!ended) throw new IllegalThreadStateException();
            return 137;
        }

        @Override
        public void destroy() {
            ended = true;
        }

        @Override
        public boolean isAlive() {
            return !ended;
        }

        @Override
        public long pid() {
            return 4711;
        }
    }
}
