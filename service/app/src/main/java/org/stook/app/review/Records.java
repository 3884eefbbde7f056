package org.stook.app.review;

import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** The records of published runs. They never change, so the last few are kept. */
@Component
public class Records {
    private static final Logger LOG = LoggerFactory.getLogger(Records.class);
    private static final int KEPT = 32;

    private final RunFiles files;
    private final JsonMapper json;
    private final Map<Long, RunRecord> kept = Collections.synchronizedMap(new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, RunRecord> eldest) {
            return size() > KEPT;
        }
    });

    Records(RunFiles files, JsonMapper json) {
        this.files = files;
        this.json = json;
    }

    /** Empty if the run is not published, or its record is out of reach. */
    public Optional<RunRecord> find(long run) {
        RunRecord known = kept.get(run);
        if (known != null) {
            return Optional.of(known);
        }
        Optional<RunRecord> read = files.record(run).flatMap(this::read);
        read.ifPresent(record -> kept.put(run, record));
        return read;
    }

    private Optional<RunRecord> read(Path file) {
        try {
            return Optional.of(RecordReader.read(json.readTree(file.toFile())));
        } catch (JacksonException | IllegalArgumentException e) {
            LOG.warn("the record {} cannot be read, so its run cannot be reviewed: {}", file, e.getMessage());
            return Optional.empty();
        }
    }
}
