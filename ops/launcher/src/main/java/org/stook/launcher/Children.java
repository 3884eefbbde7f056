package org.stook.launcher;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.stook.postgres.LocalPostgres;

/** What the service and the workers are told. */
final class Children {
    static final String DATABASE = "stook";

    private Children() {}

    static ChildPlan service(StudioPlan plan, LocalPostgres postgres) {
        List<String> arguments = new ArrayList<>();
        arguments.add("--server.address=" + plan.address());
        arguments.add("--server.port=" + plan.port());
        arguments.add("--stook.publish=" + plan.published());
        arguments.add("--stook.audit.key=" + plan.home().resolve("audit-key.pem"));
        arguments.add("--stook.setup-file=" + plan.setupCode());
        int index = 0;
        for (var station : plan.stations().entrySet()) {
            arguments.add("--stook.stations[" + index + "].name=" + station.getKey());
            arguments.add("--stook.stations[" + index + "].intake=" + station.getValue());
            index++;
        }
        arguments.addAll(settings(plan));
        return new ChildPlan(
                "service",
                plan.jars().service(),
                plan.serviceMemory(),
                arguments,
                database(postgres),
                plan.logs().resolve("service.log"));
    }

    static List<ChildPlan> workers(StudioPlan plan, LocalPostgres postgres) {
        List<String> arguments = new ArrayList<>();
        arguments.add("--stook.worker.scratch=" + plan.home().resolve("scratch"));
        arguments.addAll(settings(plan));
        return IntStream.rangeClosed(1, plan.workers())
                .mapToObj(n -> "worker-" + n)
                .map(name -> new ChildPlan(
                        name,
                        plan.jars().worker(),
                        plan.workerMemory(),
                        arguments,
                        database(postgres),
                        plan.logs().resolve(name + ".log")))
                .toList();
    }

    private static List<String> settings(StudioPlan plan) {
        return plan.settings().stream().map(setting -> "--" + setting).toList();
    }

    private static Map<String, String> database(LocalPostgres postgres) {
        Map<String, String> environment = new LinkedHashMap<>();
        environment.put("SPRING_DATASOURCE_URL", postgres.url(DATABASE));
        environment.put("SPRING_DATASOURCE_USERNAME", postgres.username());
        environment.put("SPRING_DATASOURCE_PASSWORD", postgres.password());
        return environment;
    }
}
