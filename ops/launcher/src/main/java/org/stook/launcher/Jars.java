package org.stook.launcher;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * The programs to start.
 *
 * @param service the service
 * @param worker the worker node
 */
public record Jars(Path service, Path worker) {
    private static final String SERVICE = "service/app/target/stook-app.jar";
    private static final String WORKER = "worker/node/target/stook-node.jar";

    /**
     * The jars given, else those of the source tree that this program was built in.
     *
     * @throws LaunchFailure if one is missing
     */
    static Jars find(@Nullable Path service, @Nullable Path worker) throws LaunchFailure {
        return new Jars(
                present(service, SERVICE, "service", "--service-jar"),
                present(worker, WORKER, "worker", "--worker-jar"));
    }

    private static Path present(@Nullable Path given, String usual, String what, String option) throws LaunchFailure {
        Path jar = (given == null ? tree().resolve(usual) : given).toAbsolutePath();
        if (Files.isRegularFile(jar)) return jar;
        String hint = given == null ? "build it with ./mvnw -DskipTests package, or name it with " : "check ";
        throw new LaunchFailure("there is no " + what + " jar at " + jar + "; " + hint + option);
    }

    /** The root of the source tree: this code lies in ops/launcher/target/, in a jar or in classes/. */
    private static Path tree() {
        try {
            Path here = Path.of(Jars.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            return here.resolve("../../../..").normalize();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }
}
