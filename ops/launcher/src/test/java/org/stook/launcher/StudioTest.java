package org.stook.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Real processes and a real PostgreSQL; only the service and the workers are stand-ins. */
class StudioTest {
    private static final Path HOME = Path.of("target", "test-studio").toAbsolutePath();
    private static final Pattern PROCESS = Pattern.compile("(service|worker-\\d+) is process (\\d+)");

    @TempDir
    private Path folder;

    /** One launcher asked to end, one killed: all that they started is gone each time. */
    @Test
    void allProcessesEndWithTheLauncherHoweverItEnds() throws Exception {
        Process asked = launcher();
        List<ProcessHandle> started = awaitStart(asked);
        assertThat(started).hasSize(3).allMatch(ProcessHandle::isAlive);
        assertThat(launcher().waitFor()).as("a second one in the same home").isEqualTo(ExitCode.FAILED);
        asked.destroy();
        assertThat(asked.waitFor()).isEqualTo(143);
        assertThat(started).noneMatch(ProcessHandle::isAlive);

        Process killed = launcher();
        started = awaitStart(killed);
        killed.destroyForcibly().waitFor();
        for (ProcessHandle child : started) child.onExit().get(20, TimeUnit.SECONDS);
        assertThat(Files.readString(HOME.resolve("logs/service.log")))
                .contains("--stook.stations[0].name=table-1")
                .contains("--stook.publish=" + HOME.resolve("published"));
    }

    @Test
    void aServiceThatDoesNotComeUpShowsTheEndOfItsLog() throws IOException {
        ChildPlan plan = new ChildPlan(
                "service",
                TinyProgram.jar(folder),
                List.of("-Xmx64m"),
                List.of("--broken"),
                Map.of(),
                folder.resolve("service.log"));
        Child child = new Child(plan.name(), plan::start, RestartPolicy.USUAL, line -> {});
        child.start(java.time.Instant.now());
        assertThatThrownBy(() -> Answer.await(java.net.URI.create("http://127.0.0.1:1/"), child, plan))
                .isInstanceOf(LaunchFailure.class)
                .hasMessageContaining("the service ended while it started")
                .hasMessageContaining("the shutter is stuck");
    }

    private Process launcher() throws IOException {
        Path jar = TinyProgram.jar(folder);
        return new ProcessBuilder(
                        ProcessHandle.current().info().command().orElseThrow(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "run",
                        "--home=" + HOME,
                        "--port=0",
                        "--service-jar=" + jar,
                        "--worker-jar=" + jar)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    private static List<ProcessHandle> awaitStart(Process launcher) throws IOException {
        List<ProcessHandle> children = new ArrayList<>();
        BufferedReader said = launcher.inputReader(StandardCharsets.UTF_8);
        for (String line = said.readLine(); line != null; line = said.readLine()) {
            Matcher process = PROCESS.matcher(line);
            if (process.find()) {
                children.add(ProcessHandle.of(Long.parseLong(process.group(2))).orElseThrow());
            }
            if (line.startsWith("Ctrl-C")) return children;
        }
        throw new IOException("the launcher ended before it had started all");
    }
}
