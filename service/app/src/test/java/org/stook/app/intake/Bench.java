package org.stook.app.intake;

import com.zaxxer.hikari.HikariDataSource;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.stook.app.audit.AuditTrail;
import org.stook.app.stack.Naming;
import org.stook.app.stack.Sealing;
import org.stook.app.stack.Strays;
import org.stook.app.stack.Versions;
import org.stook.app.station.StationBook;
import org.stook.app.testing.Migrated;
import org.stook.orders.Runs;
import org.stook.postgres.testing.TestDatabase;

/** One station on a real database, and a crank to turn its time by hand. */
final class Bench {
    private static final IntakeSettings.Patience PATIENCE =
            new IntakeSettings.Patience(Duration.ofSeconds(10), Duration.ofSeconds(60), Duration.ofSeconds(2));

    final HikariDataSource source = new HikariDataSource();
    final JdbcClient jdbc;
    final Sealing sealing;
    final Strays strays;
    final Naming naming;
    final StationBook book;
    private final Versions versions;
    private final EarlyLooks early = new EarlyLooks();
    private final FirstLooks looks;
    final Path intake;
    private final TransactionTemplate transaction;
    private IntakePoller poller;
    private long now = 7_000_000_000L;

    Bench(Class<?> test, Path folder) {
        TestDatabase database = Migrated.database(test);
        source.setJdbcUrl(database.url());
        source.setUsername(database.username());
        source.setPassword(database.password());
        source.setMaximumPoolSize(4);
        var transactions = new DataSourceTransactionManager(source);
        transaction = new TransactionTemplate(transactions);
        jdbc = JdbcClient.create(source);
        AuditTrail audit = new AuditTrail(jdbc);
        versions = new Versions(jdbc, audit);
        sealing = new Sealing(jdbc, new Runs(source, transactions), versions, transaction);
        strays = new Strays(jdbc, versions, sealing, transaction);
        naming = new Naming(jdbc, audit, transaction);
        book = new StationBook(jdbc, audit, transaction, PATIENCE.usual());
        looks = new FirstLooks(jdbc, transaction, early);
        intake = folder.resolve("north");
        poller = poller();
    }

    /** As after a restart: nothing but the database and the share is left. */
    void restart() {
        poller = poller();
    }

    private IntakePoller poller() {
        IntakeSettings settings = new IntakeSettings(
                List.of(new IntakeSettings.StationPlan("north", intake, null)),
                intake.resolveSibling("published"),
                PATIENCE);
        Shares shares = new Shares(jdbc);
        Stations stations = new Stations(settings, shares, book, transaction);
        FolderStacks folders = new FolderStacks(jdbc, versions);
        IntakeFiles rows = new IntakeFiles(jdbc);
        OperatorManifests manifests = new OperatorManifests(jdbc, rows);
        FolderIntake files =
                new FolderIntake(rows, new FolderIntake.Beside(folders, early, manifests), jdbc, transaction);
        Sweeps sweeps = new Sweeps(jdbc, transaction, new SweepFrames(jdbc, early));
        Completion completion = new Completion(jdbc, transaction, sweeps, sealing);
        TableTalk talk = new TableTalk(sweeps, early, () -> now);
        GroupStacks groups = new GroupStacks(jdbc, transaction, versions, completion);
        Streams streams = new Streams(new StreamShots(jdbc, early), groups, book, talk, manifests);
        FolderRound round = new FolderRound(files, folders, streams, new FolderRound.Rules(book, completion, talk));
        return new IntakePoller(stations, shares, round, () -> now);
    }

    /** New settings for the station. */
    void settings(String json) {
        book.change(1, json, "", "ada");
    }

    /** Polls once a second. */
    void seconds(int count) {
        for (int i = 0; i < count; i++) {
            now += 1_000_000_000L;
            poller.step();
            looks.step(1000);
        }
    }

    void put(String path, byte[] bytes) {
        try {
            Files.createDirectories(intake.resolve(path).getParent());
            Files.write(intake.resolve(path), bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A small JPEG, different for each number. */
    static byte[] jpeg(int number, int width) {
        return picture(number, width, "jpg");
    }

    static byte[] picture(int number, int width, String format) {
        BufferedImage image = new BufferedImage(width, 24, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < 24; y++) {
            for (int x = 0; x < width; x++) image.setRGB(x, y, (x * 7 + y * 13 * number + number * 31) & 0xFFFFFF);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, format, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    static byte[] half(byte[] whole) {
        return Arrays.copyOf(whole, whole.length / 2);
    }

    String value(String sql) {
        return String.valueOf(jdbc.sql(sql).query().singleValue());
    }

    String state(String path) {
        return value("select state from stook.intake_file where rel_path = '" + path + "'");
    }

    String reason(String path) {
        return value("select reason from stook.intake_file where rel_path = '" + path + "'");
    }
}
