package org.stook.trail.merkle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Outside check: the test vectors of RFC 6962 hashing (which RFC 9162 keeps) as published by the Certificate Transparency
 * reference implementation, google/certificate-transparency cpp/merkletree/merkle_tree_test.cc, and again by
 * transparency-dev/merkle testonly/constants.go.
 */
class PublishedVectorsTest {
    private static final List<byte[]> LEAVES = Stream.of(
                    "", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f")
            .map(HexFormat.of()::parseHex)
            .toList();
    private static final List<String> ROOTS = List.of(
            "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
            "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
            "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
            "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
            "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
            "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
            "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
            "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
            "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328");
    private static final String LEAF_0 = "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d";
    private static final String LEAF_1 = "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7";
    private static final String LEAF_4 = "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b";
    private static final String FROM_2_TO_3 = "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e";
    private static final String FROM_4_TO_5 = "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a";
    private static final String FROM_6_TO_7 = "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0";
    private static final String FROM_4_TO_7 = "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4";

    private final Nodes nodes = new Listed(LEAVES.stream().map(Hash::leaf).toList());

    @Test
    void headsOfTreesOfNoneToEightLeaves() {
        Peaks peaks = new Peaks();
        assertThat(peaks.root().hex()).isEqualTo(ROOTS.get(0));
        for (int size = 1; size <= LEAVES.size(); size++) {
            peaks.add(Hash.leaf(LEAVES.get(size - 1)));
            assertThat(peaks.root().hex()).isEqualTo(ROOTS.get(size));
            assertThat(nodes.root(size).hex()).isEqualTo(ROOTS.get(size));
        }
    }

    static Stream<Arguments> inclusionProofs() {
        return Stream.of(
                Arguments.of(0, 1, List.of()),
                Arguments.of(0, 8, List.of(LEAF_1, FROM_2_TO_3, FROM_4_TO_7)),
                Arguments.of(5, 8, List.of(LEAF_4, FROM_6_TO_7, ROOTS.get(4))),
                Arguments.of(2, 3, List.of(ROOTS.get(2))),
                Arguments.of(1, 5, List.of(LEAF_0, FROM_2_TO_3, LEAF_4)));
    }

    @ParameterizedTest
    @MethodSource("inclusionProofs")
    void inclusion(int position, int size, List<String> path) {
        List<Hash> made = Proofs.inclusion(nodes, position, size);
        assertThat(made).map(Hash::hex).isEqualTo(path);
        assertThat(Proofs.included(Hash.leaf(LEAVES.get(position)), position, size, made, Hash.ofHex(ROOTS.get(size))))
                .isTrue();
    }

    static Stream<Arguments> consistencyProofs() {
        return Stream.of(
                Arguments.of(1, 1, List.of()),
                Arguments.of(1, 8, List.of(LEAF_1, FROM_2_TO_3, FROM_4_TO_7)),
                Arguments.of(6, 8, List.of(FROM_4_TO_5, FROM_6_TO_7, ROOTS.get(4))),
                Arguments.of(2, 5, List.of(FROM_2_TO_3, LEAF_4)));
    }

    @ParameterizedTest
    @MethodSource("consistencyProofs")
    void consistency(int first, int second, List<String> path) {
        List<Hash> made = Proofs.consistency(nodes, first, second);
        assertThat(made).map(Hash::hex).isEqualTo(path);
        assertThat(Proofs.consistent(first, second, made, Hash.ofHex(ROOTS.get(first)), Hash.ofHex(ROOTS.get(second))))
                .isTrue();
    }
}
