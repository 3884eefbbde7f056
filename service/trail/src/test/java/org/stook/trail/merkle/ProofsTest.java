package org.stook.trail.merkle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ProofsTest {
    private static final int LARGEST = 40;
    private final List<Hash> leaves = IntStream.range(0, LARGEST)
            .mapToObj(i -> Hash.leaf(new byte[] {(byte) i}))
            .toList();
    private final Nodes nodes = new Listed(leaves);

    @Test
    void everyLeafOfEveryTreeIsProvenAtItsPlaceOnly() {
        for (int size = 1; size <= LARGEST; size++) {
            for (int at = 0; at < size; at++) {
                List<Hash> path = Proofs.inclusion(nodes, at, size);
                assertThat(Proofs.included(leaves.get(at), at, size, path, nodes.root(size)))
                        .isTrue();
                assertThat(Proofs.included(leaves.get(at), at + 1, size, path, nodes.root(size)))
                        .isFalse();
                assertThat(Proofs.included(Hash.empty(), at, size, path, nodes.root(size)))
                        .isFalse();
            }
        }
    }

    @Test
    void everyTreeIsProvenTheBeginningOfEveryLargerOne() {
        for (int second = 1; second <= LARGEST; second++) {
            for (int first = 1; first <= second; first++) {
                List<Hash> path = Proofs.consistency(nodes, first, second);
                assertThat(Proofs.consistent(first, second, path, nodes.root(first), nodes.root(second)))
                        .isTrue();
                assertThat(Proofs.consistent(first, second, path, Hash.empty(), nodes.root(second)))
                        .isFalse();
                assertThat(Proofs.consistent(first, second, path, nodes.root(first), Hash.empty()))
                        .isFalse();
            }
        }
    }

    @Test
    void aProofThatIsTooShortTooLongOrChangedIsRefused() {
        List<Hash> path = Proofs.inclusion(nodes, 5, 13);
        List<Hash> longer = new ArrayList<>(path);
        longer.add(Hash.empty());
        assertThat(Proofs.included(leaves.get(5), 5, 13, longer, nodes.root(13)))
                .isFalse();
        assertThat(Proofs.included(leaves.get(5), 5, 13, path.subList(1, path.size()), nodes.root(13)))
                .isFalse();
        for (int i = 0; i < path.size(); i++) {
            List<Hash> changed = new ArrayList<>(path);
            changed.set(i, Hash.empty());
            assertThat(Proofs.included(leaves.get(5), 5, 13, changed, nodes.root(13)))
                    .isFalse();
        }
        assertThatThrownBy(() -> Proofs.inclusion(nodes, 13, 13)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void theRightEdgeIsEnoughToGoOn() {
        for (int size = 0; size < LARGEST; size++) {
            Peaks peaks = Peaks.of(nodes, size);
            assertThat(peaks.root()).isEqualTo(nodes.root(size));
            peaks.add(
                    leaves.get(size),
                    (level, position, hash) -> assertThat(hash).isEqualTo(nodes.node(level, position)));
            assertThat(peaks.root()).isEqualTo(nodes.root(size + 1));
        }
    }
}
