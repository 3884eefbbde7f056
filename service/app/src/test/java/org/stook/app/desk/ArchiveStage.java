package org.stook.app.desk;

import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.transaction.support.TransactionTemplate;
import org.stook.app.archive.PublishedStudio;
import org.stook.app.archive.bag.Packages;
import org.stook.app.audit.AuditSettings;
import org.stook.app.audit.StampSettings;
import org.stook.app.publish.Publications;
import org.stook.app.testing.Migrated;
import org.stook.postgres.testing.TestDatabase;
import tools.jackson.databind.json.JsonMapper;

/** The archive and its addresses on a database of its own, without the rest of the service. */
final class ArchiveStage implements AutoCloseable {
    final JdbcClient jdbc;
    final PublishedStudio studio;
    final MockMvc web;
    final Packages packages;
    private final HikariDataSource source = new HikariDataSource();
    private final AnnotationConfigApplicationContext context = new AnnotationConfigApplicationContext();

    ArchiveStage(Class<?> test, Path folder) {
        TestDatabase database = Migrated.database(test);
        source.setJdbcUrl(database.url());
        source.setUsername(database.username());
        source.setPassword(database.password());
        jdbc = JdbcClient.create(source);
        studio = new PublishedStudio(jdbc, folder);
        context.registerBean(JdbcClient.class, () -> jdbc);
        context.registerBean(JsonMapper.class, JsonMapper::shared);
        context.registerBean(
                TransactionTemplate.class, () -> new TransactionTemplate(new DataSourceTransactionManager(source)));
        context.registerBean(Words.class, () -> new Words("UTC"));
        context.register(Publications.class, Handouts.class, ArchiveApi.class, BagApi.class, IiifApi.class);
        context.registerBean(AuditSettings.class, () -> new AuditSettings(null, List.of()));
        context.registerBean(StampSettings.class, () -> new StampSettings(null, Duration.ofHours(1)));
        context.scan("org.stook.app.archive", "org.stook.app.audit");
        context.refresh();
        packages = context.getBean(Packages.class);
        web = MockMvcBuilders.standaloneSetup(
                        context.getBean(ArchiveApi.class),
                        context.getBean(BagApi.class),
                        context.getBean(IiifApi.class))
                .setControllerAdvice(new Problems())
                .build();
    }

    @Override
    public void close() {
        context.close();
        source.close();
    }
}
