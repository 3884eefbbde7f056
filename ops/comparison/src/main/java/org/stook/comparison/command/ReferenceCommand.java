package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.stook.comparison.reference.ReferencePipeline;
import org.stook.comparison.stack.FrameFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tools.jackson.databind.json.JsonMapper;

/** Runs the reference pipeline alone, so that it can be measured as a whole process. */
@Command(name = "reference", description = "Blends a folder of frames by the straightforward pipeline.")
public final class ReferenceCommand implements Callable<Integer> {
    @Mixin
    private JobFiles files = new JobFiles();

    @Option(names = "--report", required = true, description = "what was done, JSON")
    @SuppressWarnings("NullAway.Init") // required
    private Path report;

    @Option(names = "--reference", defaultValue = "-1", description = "rank of the reference frame (the middle one)")
    private int reference;

    @Option(names = "--registered", description = "the frames lie in one geometry already")
    private boolean registered;

    @Override
    public Integer call() throws IOException {
        List<Path> found = FrameFiles.in(files.frames());
        int rank = reference < 0 ? found.size() / 2 : reference;
        ReferencePipeline.Result result = new ReferencePipeline(
                        new ReferencePipeline.Settings(rank, !registered, files.threads()))
                .run(found, files.out());
        List<Map<String, Object>> entries = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            Map<String, Object> entry = new LinkedHashMap<>();
            entry.put("file", found.get(i).getFileName().toString());
            entry.put("role", i == rank ? "reference" : "frame");
            entry.put("placement", result.placements().get(i).toArray());
            entries.add(entry);
        }
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("commonArea", result.commonArea());
        root.put("frames", entries);
        root.put("seconds", result.seconds());
        JsonMapper.shared().writerWithDefaultPrettyPrinter().writeValue(report.toFile(), root);
        return 0;
    }
}
