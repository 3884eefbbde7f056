package org.stook.app;

import java.util.Objects;
import java.util.function.LongSupplier;
import javax.sql.DataSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.springframework.transaction.PlatformTransactionManager;
import org.stook.app.intake.IntakeSettings;
import org.stook.app.station.StationSettings;
import org.stook.migrations.Schema;
import org.stook.migrations.WorkingLogin;
import org.stook.orders.Runs;
import org.stook.orders.Upkeep;
import org.stook.orders.Workers;

/** What the packages stand on: the migrated database, the seam to the workers, the monotonic counter. */
@Configuration(proxyBeanMethods = false)
class Foundations {
    private static final Logger LOG = LoggerFactory.getLogger(Foundations.class);

    /** How many migrations this start had to run. The rest of the beans that use the schema depend on it. */
    record Migrated(int migrations) {}

    @Bean
    Migrated migrated(DataSource source, OwnerSettings owner, JdbcConnectionDetails working) {
        if (owner.username() == null) {
            int migrations = Schema.migrate(source);
            if (WorkingLogin.mayChangeTheTrail(source)) {
                LOG.warn(
                        "this service logs in as the owner of its tables, who could change the audit trail; see stook.owner");
            }
            return new Migrated(migrations);
        }
        DataSource owning = new DriverManagerDataSource(
                working.getJdbcUrl(), owner.username(), Objects.requireNonNullElse(owner.password(), ""));
        int migrations = Schema.migrate(owning);
        WorkingLogin.ensure(
                owning,
                Objects.requireNonNull(working.getUsername(), "spring.datasource.username is not set"),
                Objects.requireNonNullElse(working.getPassword(), ""));
        return new Migrated(migrations);
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
