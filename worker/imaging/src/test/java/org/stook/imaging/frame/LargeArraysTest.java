package org.stook.imaging.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class LargeArraysTest {
    private final AtomicBoolean pinned = new AtomicBoolean();
    private final AtomicBoolean decoding = new AtomicBoolean(true);

    @AfterEach
    void stopDecoding() {
        decoding.set(false);
    }

    @Test
    void isMadeInAMomentInWhichADecoderHasNothingPinned() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        Thread decoder = new Thread(() -> decode(begun));
        decoder.start();
        begun.await();
        assertThat(LargeArrays.whileNothingIsPinned(pinned::get)).isFalse();
        assertThat(decoder.isAlive())
                .as("the decoder is not done, it only rested")
                .isTrue();
        decoding.set(false);
        decoder.join();
    }

    private void decode(CountDownLatch begun) {
        LargeArrays.beginPinning();
        try {
            while (decoding.get()) {
                pinned.set(true);
                begun.countDown();
                pinned.set(false);
                LargeArrays.rest();
            }
        } finally {
            LargeArrays.endPinning();
        }
    }

    @Test
    void restingMeansNothingToAThreadThatPinsNothing() {
        LargeArrays.rest();
        assertThat(LargeArrays.floats(3)).hasSize(3);
        assertThat(LargeArrays.bytes(2 << 20)).hasSize(2 << 20);
    }
}
