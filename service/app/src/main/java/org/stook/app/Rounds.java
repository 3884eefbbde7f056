package org.stook.app;

import java.time.Duration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.stook.app.archive.bag.Packages;
import org.stook.app.audit.HeadExport;
import org.stook.app.audit.Sealer;
import org.stook.app.audit.Stamps;
import org.stook.app.intake.FirstLooks;
import org.stook.app.intake.IntakePoller;
import org.stook.app.keeping.Fixity;
import org.stook.app.keeping.Forecast;
import org.stook.app.keeping.Retention;
import org.stook.app.queue.Janitor;
import org.stook.app.queue.QueueUpkeep;
import org.stook.app.queue.ShareRoom;

/** All that recurs, and how often. */
@Configuration(proxyBeanMethods = false)
class Rounds {
    /** Few enough that a step ends within its heartbeat, and that the station page hears of a sweep soon. */
    private static final int LOOKS_A_STEP = 24;

    /** A second or two from a share. */
    private static final long BYTES_A_STEP = 256L << 20;

    @Bean
    Recurring intakeRound(IntakePoller poller) {
        return new Recurring("intake", Duration.ofMillis(500), poller::watch);
    }

    @Bean
    Recurring lookRound(FirstLooks looks) {
        return new Recurring("look", Duration.ofMillis(300), () -> looks.step(LOOKS_A_STEP));
    }

    @Bean
    Recurring upkeepRound(QueueUpkeep upkeep) {
        return new Recurring("upkeep", Duration.ofMinutes(1), upkeep::step);
    }

    @Bean
    Recurring roomRound(ShareRoom room) {
        return new Recurring("room", Duration.ofSeconds(5), room::step);
    }

    @Bean
    Recurring janitorRound(Janitor janitor) {
        return new Recurring("janitor", Duration.ofMinutes(10), janitor::step);
    }

    /** What happened since the last head is not provable yet: often enough that this is little. */
    @Bean
    Recurring sealRound(Sealer sealer, HeadExport export) {
        return new Recurring("seal", Duration.ofSeconds(10), () -> {
            sealer.step();
            export.step();
        });
    }

    @Bean
    Recurring stampRound(Stamps stamps) {
        return new Recurring("stamp", Duration.ofMinutes(1), stamps::step);
    }

    @Bean
    Recurring packagesRound(Packages packages) {
        return new Recurring("packages", Duration.ofSeconds(1), () -> packages.step(BYTES_A_STEP));
    }

    @Bean
    Recurring fixityRound(Fixity fixity) {
        return new Recurring("fixity", Duration.ofSeconds(10), fixity::step);
    }

    @Bean
    Recurring keepingRound(Retention retention, Forecast forecast) {
        return new Recurring("keeping", Duration.ofHours(1), () -> {
            forecast.step();
            retention.step();
        });
    }
}
