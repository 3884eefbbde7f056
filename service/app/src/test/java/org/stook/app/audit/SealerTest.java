package org.stook.app.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.stook.app.testing.Migrated;
import org.stook.orders.WorkOrder;
import org.stook.trail.Head;
import org.stook.trail.Proof;
import org.stook.trail.PublicHeadKey;
import org.stook.trail.file.HeadFolder;
import org.stook.trail.file.StampFiles;
import org.stook.trail.merkle.Hash;
import org.stook.trail.merkle.Proofs;

class SealerTest {
    @TempDir
    private Path folder;

    private static DataSource source;
    private static JdbcClient jdbc;
    private Heads heads;
    private Sealer sealer;
    private HeadExport export;
    private AuditProofs proofs;
    private Path elsewhere;

    @BeforeAll
    static void prepare() {
        source = Migrated.database(SealerTest.class).dataSource();
        jdbc = JdbcClient.create(source);
    }

    @BeforeEach
    void open() {
        jdbc.sql(
                        "set session_replication_role = replica; truncate stook.audit_entry, stook.audit_open, stook.audit_leaf,"
                                + " stook.audit_node, stook.audit_token, stook.audit_seal, stook.share restart identity cascade")
                .update();
        elsewhere = folder.resolve("elsewhere");
        AuditSettings settings = new AuditSettings(folder.resolve("head-key.pem"), List.of(elsewhere));
        TreeStore tree = new TreeStore(jdbc);
        heads = new Heads(jdbc);
        sealer = new Sealer(
                jdbc, new TransactionTemplate(new DataSourceTransactionManager(source)), tree, heads, settings);
        export = new HeadExport(jdbc, tree, heads, settings, sealer);
        proofs = new AuditProofs(jdbc, tree, heads, sealer);
    }

    private void acts(int count) {
        jdbc.sql("select count(stook.write_audit('sign-in', 'person/' || n, jsonb_build_object('n', n)))"
                        + " from generate_series(1, ?) n")
                .param(count)
                .query(Long.class)
                .single();
    }

    @Test
    void everyEntryBecomesALeafWithoutGaps() {
        acts(700);
        assertThat(sealer.step()).isEqualTo(700);
        assertThat(sealer.step()).isZero();
        acts(1);
        assertThat(sealer.step()).isEqualTo(1);
        assertThat(heads.newest()).map(Head::size).contains(701L);
        assertThat(value("select count(*) || ' ' || max(position) from stook.audit_leaf"))
                .isEqualTo("701 700");
        assertThat(value("select string_agg(level || ':' || position, ' ' order by position) from stook.audit_node"))
                .isEqualTo("8:0 8:1");
    }

    @Test
    void anEntryOfATransactionThatWasLongOpenIsSealedLate() throws SQLException {
        try (Connection slow = source.getConnection()) {
            slow.setAutoCommit(false);
            slow.createStatement().execute("select stook.write_audit('slow', 'person/ada')");
            acts(2);
            assertThat(sealer.step()).isEqualTo(2);
            slow.commit();
        }
        assertThat(sealer.step()).isEqualTo(1);
        assertThat(value("select string_agg(entry_id::text, ' ' order by position) from stook.audit_leaf"))
                .isEqualTo("2 3 1");
    }

    @Test
    void whatWasRolledBackLeavesNoGap() throws SQLException {
        try (Connection undecided = source.getConnection()) {
            undecided.setAutoCommit(false);
            undecided.createStatement().execute("select stook.write_audit('undone', 'person/ada')");
            undecided.rollback();
        }
        acts(1);
        assertThat(sealer.step()).isEqualTo(1);
    }

    @Test
    void headsAreSignedAndContinueEachOther() throws IOException {
        acts(300);
        sealer.step();
        Head first = heads.newest().orElseThrow();
        acts(411);
        sealer.step();
        Head second = heads.newest().orElseThrow();
        export.step();
        PublicHeadKey key = PublicHeadKey.read(elsewhere.resolve(HeadFolder.KEY));
        assertThat(second.signedBy(key)).isTrue();
        assertThat(second.previous()).isEqualTo(first.root());
        List<Hash> path = proofs.consistency(300, 711).orElseThrow().stream()
                .map(Hash::ofHex)
                .toList();
        assertThat(Proofs.consistent(300, 711, path, first.root(), second.root()))
                .isTrue();
        assertThat(proofs.consistency(299, 711)).as("there is no such head").isEmpty();
    }

    @Test
    void aProofHoldsForTheEntriesOfASubjectAndNoOthers() {
        acts(600);
        jdbc.sql("select stook.write_audit('run.CREATED', 'run/4')")
                .query(Long.class)
                .single();
        acts(3);
        Proof proof = Proof.parse(proofs.ofPublication(4, 9).toJson());
        assertThat(proof.head()).isEqualTo(heads.newest().orElseThrow());
        assertThat(proof.entries())
                .singleElement()
                .satisfies(proven -> assertThat(proof.holds(proven)).isTrue())
                .satisfies(proven -> assertThat(proven.entry().kind()).isEqualTo("run.CREATED"))
                .satisfies(proven -> assertThat(proof.holds(new Proof.Proven(
                                proven.position(), proven.canonical().replace("run/4", "run/5"), proven.path())))
                        .isFalse());
    }

    @Test
    void headsLieBesideThePublicationsAndElsewhere() throws IOException {
        Path wall = share(folder.resolve("wall"));
        acts(5);
        sealer.step();
        export.step();
        acts(2);
        sealer.step();
        export.step();
        for (Path place : List.of(wall.resolve(HeadFolder.NAME), elsewhere)) {
            assertThat(HeadFolder.readHeads(place.resolve(HeadFolder.HEADS)))
                    .extracting(Head::size)
                    .containsExactly(5L, 7L);
            assertThat(new HeadFolder(place).leafCount()).isEqualTo(7);
        }
        assertThat(export.places()).extracting(HeadExport.Place::trouble).containsOnlyNulls();
    }

    @Test
    void aShareThatIsNotMountedGetsWhatItMissedLater() throws IOException {
        Path wall = share(folder.resolve("wall"));
        Files.move(wall, folder.resolve("away"));
        acts(5);
        sealer.step();
        export.step();
        assertThat(wall).doesNotExist();
        Files.move(folder.resolve("away"), wall);
        export.step();
        assertThat(new HeadFolder(wall.resolve(HeadFolder.NAME)).lastHead())
                .isEqualTo(Optional.of(heads.newest().orElseThrow()));
    }

    @Test
    void aDatabaseThatWasSetBackGetsNothingMoreLaidOutAndIsNamed() throws IOException {
        acts(5);
        sealer.step();
        export.step();
        Stream.of("audit_leaf", "audit_seal", "audit_entry")
                .forEach(table -> jdbc.sql(
                                "set session_replication_role = replica; delete from stook.%s".formatted(table))
                        .update());
        acts(9);
        sealer.step();
        export.step();
        assertThat(export.places())
                .singleElement()
                .satisfies(place -> assertThat(place.trouble())
                        .contains("the head over 5 entries")
                        .contains("the database has none of that size"));
        assertThat(HeadFolder.readHeads(elsewhere.resolve(HeadFolder.HEADS))).hasSize(1);
    }

    @Test
    void aTreeThatWasChangedIsNotBuiltOn() {
        acts(5);
        sealer.step();
        jdbc.sql(
                        "set session_replication_role = replica; update stook.audit_leaf set hash = decode(repeat('ab', 32), 'hex') where position = 2")
                .update();
        acts(1);
        assertThatThrownBy(sealer::step).hasMessageContaining("the audit tree was changed: over 5 entries");
    }

    private Path share(Path root) throws IOException {
        String sentinel = jdbc.sql(
                        "insert into stook.share (name, kind, root) values ('wall', 'PUBLISH', ?) returning sentinel::text")
                .param(root.toString())
                .query(String.class)
                .single();
        Files.createDirectories(root);
        Files.writeString(root.resolve(WorkOrder.Share.SENTINEL), sentinel + "\n");
        return root;
    }

    private String value(String sql) {
        return String.valueOf(jdbc.sql(sql).query().singleValue());
    }

    @Test
    void theNewestHeadIsStampedNowAndThenAndTheStampLaidBesideIt() throws IOException {
        int[] asked = new int[1];
        StampSettings hourly = new StampSettings(URI.create("http://authority.example/"), Duration.ofHours(1));
        Stamps stamps = new Stamps(jdbc, heads, export, hourly, head -> {
            asked[0]++;
            if (asked[0] == 1) throw new IOException("away");
            return new byte[] {(byte) head.size()};
        });
        acts(5);
        sealer.step();
        export.step();
        stamps.step(); // the authority is away
        assertThat(new StampFiles(elsewhere).sizes()).isEmpty();
        stamps.step();
        acts(1);
        sealer.step();
        export.step();
        stamps.step(); // the hour is not over
        assertThat(asked[0]).isEqualTo(2);
        assertThat(new StampFiles(elsewhere).sizes()).containsExactly(5L);
        assertThat(new StampFiles(elsewhere).file(5)).hasBinaryContent(new byte[] {5});
    }
}
