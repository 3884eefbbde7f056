package org.stook.orders;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.stook.migrations.Schema;

class WorkersTest {
    private static final Studio STUDIO = new Studio(WorkersTest.class);

    @Test
    void workersAreListedByWhenTheyWereLastHeardOf() {
        Workers workers = new Workers(STUDIO.source);
        workers.seen("w1", Workers.State.PAUSED, "no scratch", 5);
        assertThat(workers.present()).extracting(Workers.Worker::id).containsExactly("w1", "w2");
        assertThat(workers.present().get(0).pauseReason()).isEqualTo("no scratch");
        workers.seen("w2", Workers.State.GONE, null, 5);
        assertThat(workers.present()).hasSize(1);
        assertThat(workers.schemaVersion()).isEqualTo(Schema.NEWEST);
    }
}
