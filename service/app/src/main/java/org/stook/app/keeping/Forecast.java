package org.stook.app.keeping;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.orders.WorkOrder;

/**
 * When a share will be full, by a straight line (least squares) through its free room of the last four weeks: common practice,
 * and no more than that.
 */
@Component
public class Forecast {
    private static final Logger LOG = LoggerFactory.getLogger(Forecast.class);
    /** A line through less says nothing. */
    private static final Duration SHORTEST = Duration.ofDays(2);

    private static final double SECONDS_A_DAY = 86_400;

    /** @param free bytes */
    record Sample(Instant at, long free) {}

    /**
     * @param perDay bytes that go each day; null if there are not two days of samples yet
     * @param fullAt null if it does not fill up, or cannot be told
     */
    public record Outlook(
            String share,
            long freeBytes,
            long totalBytes,
            @Nullable Long perDay,
            @Nullable Instant fullAt) {}

    private final JdbcClient jdbc;

    Forecast(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Notes the room on every share that is there. */
    public void step() {
        record Share(long id, Path root) {}
        List<Share> shares = jdbc.sql("select id, root from stook.share order by id")
                .query((row, n) -> new Share(row.getLong(1), Path.of(row.getString(2))))
                .list();
        for (Share share : shares) {
            if (!Files.exists(share.root().resolve(WorkOrder.Share.SENTINEL))) continue;
            try {
                FileStore store = Files.getFileStore(share.root());
                jdbc.sql("insert into stook.share_room (share_id, free_bytes, total_bytes) values (:id, :free, :total)")
                        .param("id", share.id())
                        .param("free", store.getUsableSpace())
                        .param("total", store.getTotalSpace())
                        .update();
            } catch (IOException e) {
                LOG.warn("the room on {} cannot be told: {}", share.root(), e.toString());
            }
        }
        jdbc.sql("delete from stook.share_room where at < now() - interval '1 year'")
                .update();
    }

    public List<Outlook> outlooks() {
        record Share(long id, String name) {}
        return jdbc
                .sql("select id, name from stook.share where id in (select share_id from stook.share_room) order by id")
                .query((row, n) -> new Share(row.getLong(1), row.getString(2)))
                .list()
                .stream()
                .map(share -> outlook(share.name(), samples(share.id()), total(share.id())))
                .toList();
    }

    private List<Sample> samples(long share) {
        return jdbc.sql(
                        "select at, free_bytes from stook.share_room where share_id = :id and at > now() - interval '28 days'"
                                + " or share_id = :id and at = (select max(at) from stook.share_room where share_id = :id) order by at")
                .param("id", share)
                .query((row, n) ->
                        new Sample(row.getObject(1, OffsetDateTime.class).toInstant(), row.getLong(2)))
                .list();
    }

    private long total(long share) {
        return jdbc.sql("select total_bytes from stook.share_room where share_id = :id order by at desc limit 1")
                .param("id", share)
                .query(Long.class)
                .single();
    }

    /** @param samples oldest first, at least one */
    static Outlook outlook(String share, List<Sample> samples, long total) {
        Sample first = samples.get(0);
        Sample last = samples.get(samples.size() - 1);
        if (Duration.between(first.at(), last.at()).compareTo(SHORTEST) < 0) {
            return new Outlook(share, last.free(), total, null, null);
        }
        double meanDay =
                samples.stream().mapToDouble(s -> days(first, s)).average().orElse(0);
        double meanFree = samples.stream().mapToDouble(Sample::free).average().orElse(0);
        double over = 0;
        double under = 0;
        for (Sample s : samples) {
            double day = days(first, s) - meanDay;
            over += day * (s.free() - meanFree);
            under += day * day;
        }
        double perDay = -over / under;
        Instant fullAt =
                perDay <= 0 ? null : last.at().plusSeconds((long) Math.min(SECONDS_A_DAY * last.free() / perDay, 1e11));
        return new Outlook(share, last.free(), total, Math.round(perDay), fullAt);
    }

    private static double days(Sample first, Sample s) {
        return Duration.between(first.at(), s.at()).toSeconds() / SECONDS_A_DAY;
    }
}
