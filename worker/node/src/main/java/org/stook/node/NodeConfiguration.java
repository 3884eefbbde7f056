package org.stook.node;

import com.github.kagkarlsson.scheduler.Scheduler;
import java.io.IOException;
import javax.sql.DataSource;
import org.springframework.batch.core.launch.JobOperator;
import org.springframework.batch.core.repository.JobRepository;
import org.springframework.boot.autoconfigure.condition.ConditionalOnBooleanProperty;
import org.springframework.boot.batch.autoconfigure.BatchTransactionManager;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.transaction.PlatformTransactionManager;
import org.stook.imaging.composite.EngineVersion;
import org.stook.node.job.CompositionWork;
import org.stook.node.job.Workshop;
import org.stook.node.publish.Publisher;
import org.stook.node.publish.Room;
import org.stook.node.publish.Shares;
import org.stook.orders.DbClock;
import org.stook.orders.OrderBook;
import org.stook.orders.Workers;
import org.stook.orders.attempt.RunTask;

/** What a worker process is made of. */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
class NodeConfiguration {
    @Bean
    Scratch scratch(WorkerProperties worker) throws IOException {
        return Scratch.open(worker.scratch(), worker.id());
    }

    @Bean
    Room room(RoomProperties room) {
        return new Room(room.leastFree().toBytes());
    }

    @Bean
    Shares shares(WorkerProperties worker, Room room) {
        return new Shares(worker.shares(), room);
    }

    @Bean
    Workshop workshop(WorkerProperties worker, Shares shares, Scratch scratch) {
        return new Workshop(
                shares,
                new Publisher(shares),
                scratch.folder(),
                new Workshop.Means(worker.threads(), Runtime.getRuntime().maxMemory()));
    }

    @Bean
    CompositionWork work(Workshop workshop, JobOperator operator, JobRepository repository) {
        return new CompositionWork(workshop, operator, repository);
    }

    @Bean
    RunTask runTask(DataSource source, PlatformTransactionManager transactions, WorkerProperties worker) {
        return new RunTask(source, transactions, worker.id(), EngineVersion.current());
    }

    @Bean(defaultCandidate = false)
    @BatchTransactionManager
    PlatformTransactionManager stepHistory(DataSource source) {
        return new StepHistoryTransactions(source);
    }

    /** Started and stopped by {@link Presence}. */
    @Bean(destroyMethod = "")
    Scheduler scheduler(DataSource source, RunTask task, CompositionWork work, WorkerProperties worker) {
        return OrderBook.worker(source, new DbClock(source), worker.id(), task.with(work))
                .build();
    }

    @Bean
    @ConditionalOnBooleanProperty(name = "stook.worker.rehearse", matchIfMissing = true)
    WarmUp warmUp(Workshop workshop, Scheduler scheduler) {
        return new WarmUp(
                workshop.scratch(),
                workshop.means().threads(),
                () -> !scheduler.getCurrentlyExecuting().isEmpty());
    }

    @Bean
    Presence presence(DataSource source, Scheduler scheduler, Workshop workshop, WorkerProperties worker, Room room) {
        return new Presence(
                new Workers(source),
                Presence.announcement(worker.id(), EngineVersion.current()),
                scheduler,
                new Fitness(workshop, room));
    }
}
