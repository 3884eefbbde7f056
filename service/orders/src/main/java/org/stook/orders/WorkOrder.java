package org.stook.orders;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * All that a worker needs to know for one attempt at a run.
 *
 * @param run the run
 * @param attempt this attempt's number, the fence
 * @param stack whose frames
 * @param frames in sweep order, strays left out
 * @param settings id and JSON of the settings
 * @param output where the result goes
 * @param shares the shares that frames and output lie on
 */
public record WorkOrder(
        RunId run,
        int attempt,
        Stack stack,
        List<FrameFile> frames,
        Settings settings,
        Output output,
        List<Share> shares) {

    /**
     * @param view which view of the subject, null: the only one
     * @param reference ordinal of the reference frame, null: the worker chooses
     */
    public record Stack(
            long id,
            String station,
            String subject,
            @Nullable String view,
            @Nullable Integer reference) {}

    /** What a frame is for. */
    public enum Role {
        SWEEP,
        SLATE,
        TARGET
    }

    /**
     * @param path relative to its share's root, with slashes
     * @param width in pixels, as the header said on arrival
     * @param height in pixels
     */
    public record FrameFile(int ordinal, Role role, String sha256, long shareId, String path, int width, int height) {}

    /** @param json the settings as a JSON object */
    public record Settings(String id, String json) {}

    /**
     * @param folder below the share's root, may be empty
     * @param names how the station names what it publishes
     */
    public record Output(long shareId, String folder, NamePattern names) {}

    /** @param root as the service mounts it; a node may know it by another path */
    public record Share(long id, String name, String root, UUID sentinel) {
        /** File at a share's root that holds its UUID; an empty mount point has none. The service writes it, nobody else. */
        public static final String SENTINEL = ".studio-share";
    }

    public WorkOrder {
        frames = List.copyOf(frames);
        shares = List.copyOf(shares);
    }

    public Share share(long id) {
        return shares.stream().filter(s -> s.id() == id).findFirst().orElseThrow();
    }

    /** The frames to blend. */
    public List<FrameFile> sweep() {
        return frames.stream().filter(f -> f.role() == Role.SWEEP).toList();
    }

    /** Where this attempt writes first, relative to the output share's root: no other attempt ever writes there. */
    public String stagedName() {
        return inFolder(".staging/" + run + "." + attempt + ".part");
    }

    /**
     * The final name, relative to the output share's root. It holds the content's hash, so that publishing the same bytes
     * again is harmless and no name is ever used twice.
     *
     * @param sha256 hash of the composite, 64 hex digits
     * @param ending such as {@code .tif} or {@code .preview.jpg}
     */
    public String finalName(String sha256, String ending) {
        Map<String, String> words = new HashMap<>(Map.of(
                "station", stack.station(),
                "subject", stack.subject(),
                "stack", "" + stack.id(),
                "run", "" + run,
                "hash", sha256.substring(0, 16)));
        if (stack.view() != null) words.put("view", stack.view());
        return inFolder(output.names().fill(words) + ending);
    }

    private String inFolder(String name) {
        return output.folder().isEmpty() ? name : output.folder() + "/" + name;
    }
}
