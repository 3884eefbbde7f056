package org.stook.launcher;

import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.stook.postgres.LocalPostgres;

/** What the service and the workers are told. */
final class Children {
    static final String DATABASE = "stook";

    /** The login of service and workers, with a new password at each start of the studio: the service sets it. */
    private static final String LOGIN = "stook_work";
    /** For few and large objects: pictures are never copied, and nothing is set aside for doing so. */
    private static final List<String> WORKER_COLLECTOR =
            List.of("-XX:+UseSerialGC", "-Xmn64m", "-XX:PretenureSizeThreshold=1m");

    private final StudioPlan plan;
    private final LocalPostgres postgres;
    private final String password = password();

    Children(StudioPlan plan, LocalPostgres postgres) {
        this.plan = plan;
        this.postgres = postgres;
    }

    ChildPlan service() {
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
        arguments.addAll(settings());
        return new ChildPlan(
                "service",
                plan.jars().service(),
                List.of("-Xmx" + plan.serviceMemory()),
                arguments,
                owner(),
                plan.logs().resolve("service.log"));
    }

    List<ChildPlan> workers() {
        List<String> arguments = new ArrayList<>();
        arguments.add("--stook.worker.scratch=" + plan.home().resolve("scratch"));
        arguments.addAll(settings());
        List<String> javaOptions = new ArrayList<>(List.of("-Xmx" + plan.workerMemory()));
        javaOptions.addAll(WORKER_COLLECTOR);
        return IntStream.rangeClosed(1, plan.workers())
                .mapToObj(n -> "worker-" + n)
                .map(name -> new ChildPlan(
                        name,
                        plan.jars().worker(),
                        javaOptions,
                        arguments,
                        login(),
                        plan.logs().resolve(name + ".log")))
                .toList();
    }

    private List<String> settings() {
        return plan.settings().stream().map(setting -> "--" + setting).toList();
    }

    private Map<String, String> login() {
        Map<String, String> environment = new LinkedHashMap<>();
        environment.put("SPRING_DATASOURCE_URL", postgres.url(DATABASE));
        environment.put("SPRING_DATASOURCE_USERNAME", LOGIN);
        environment.put("SPRING_DATASOURCE_PASSWORD", password);
        return environment;
    }

    private Map<String, String> owner() {
        Map<String, String> environment = login();
        environment.put("STOOK_OWNER_USERNAME", postgres.username());
        environment.put("STOOK_OWNER_PASSWORD", postgres.password());
        return environment;
    }

    private static String password() {
        byte[] random = new byte[24];
        new SecureRandom().nextBytes(random);
        return HexFormat.of().formatHex(random);
    }
}
