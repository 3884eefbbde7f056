package org.stook.drills.stage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The worker program, unpacked once so that it starts quicker than from its single jar. */
public final class Program {
    private static final String JAVA =
            Path.of(System.getProperty("java.home"), "bin", "java").toString();

    private final Path jar;

    private Program(Path jar) {
        this.jar = jar;
    }

    /** @param nodeJar as the build makes it */
    public static Program unpack(Path nodeJar, Path folder) throws IOException, InterruptedException {
        if (!Files.exists(nodeJar)) {
            throw new IOException(nodeJar + " is not built; build the whole tree first");
        }
        Path unpacked = Files.createDirectories(folder).resolve("program");
        Processes.must(List.of(
                JAVA, "-Djarmode=tools", "-jar", nodeJar.toString(), "extract", "--destination", unpacked.toString()));
        Program program = new Program(unpacked.resolve(nodeJar.getFileName()));
        program.archiveClasses();
        return program;
    }

    /** Loaded classes as an archive for the JVM to map: a drill starts the program hundreds of times. */
    private void archiveClasses() throws IOException, InterruptedException {
        Processes.run(
                JAVA,
                "-XX:ArchiveClassesAtExit=" + archive(),
                "-XX:+UseSerialGC",
                "-Dspring.context.exit=onRefresh",
                "-jar",
                jar.toString(),
                "--spring.datasource.url=jdbc:postgresql://127.0.0.1:1/none");
    }

    private Path archive() {
        return jar.resolveSibling("classes.jsa");
    }

    List<String> command(List<String> javaOptions, List<String> settings) {
        List<String> command = new ArrayList<>(List.of(
                JAVA,
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xshare:auto",
                "-XX:SharedArchiveFile=" + archive(),
                "-Djava.awt.headless=true",
                "-XX:+ExitOnOutOfMemoryError"));
        command.addAll(javaOptions);
        command.addAll(List.of("-jar", jar.toString()));
        settings.forEach(setting -> command.add("--" + setting));
        return command;
    }
}
