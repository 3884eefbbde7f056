package org.stook.app;

import java.util.function.LongSupplier;
import javax.sql.DataSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.transaction.PlatformTransactionManager;
import org.stook.app.intake.IntakeSettings;
import org.stook.app.station.StationSettings;
import org.stook.migrations.Schema;
import org.stook.orders.Runs;
import org.stook.orders.Upkeep;
import org.stook.orders.Workers;

/** What the packages stand on: the migrated database, the seam to the workers, the monotonic counter. */
@Configuration(proxyBeanMethods = false)
class Foundations {
    /** How many migrations this start had to run. The rest of the beans that use the schema depend on it. */
    record Migrated(int migrations) {}

    @Bean
    Migrated migrated(DataSource source) {
        return new Migrated(Schema.migrate(source));
    }

    @Bean
    Runs runs(DataSource source, PlatformTransactionManager transactions) {
        return new Runs(source, transactions);
    }

    @Bean
    Upkeep upkeep(DataSource source, PlatformTransactionManager transactions) {
        return new Upkeep(source, transactions);
    }

    @Bean
    Workers workers(DataSource source) {
        return new Workers(source);
    }

    @Bean
    StationSettings.Patience usualPatience(IntakeSettings settings) {
        return settings.intake().usual();
    }

    /** Nanoseconds that only go forward; tests turn their own. */
    @Bean
    LongSupplier ticker() {
        return System::nanoTime;
    }
}
