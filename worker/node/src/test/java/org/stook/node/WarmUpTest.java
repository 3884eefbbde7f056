package org.stook.node;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WarmUpTest {
    @TempDir
    Path scratch;

    @Test
    void endsAtOnceWhenThereIsWork() {
        AtomicInteger asked = new AtomicInteger();
        WarmUp warmUp = new WarmUp(scratch, 1, () -> asked.incrementAndGet() > 0);
        warmUp.start();
        warmUp.stop();
        assertThat(asked).hasValueLessThanOrEqualTo(1);
        assertThat(scratch).isEmptyDirectory();
    }
}
