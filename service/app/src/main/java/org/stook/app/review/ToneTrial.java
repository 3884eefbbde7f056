package org.stook.app.review;

import java.io.IOException;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.stook.imaging.composite.Recipe;
import tools.jackson.databind.json.JsonMapper;

/** Tries tones on a frame, by the code that the workers tone with. */
@Component
public class ToneTrial {
    private final FramePictures pictures;
    private final Reruns reruns;
    private final JsonMapper json = JsonMapper.builder().build();

    ToneTrial(FramePictures pictures, Reruns reruns) {
        this.pictures = pictures;
        this.reruns = reruns;
    }

    /**
     * JPEG of a frame of the stack with the draft's tones, and the finish of a run.
     *
     * @param run whose other settings hold, 0 for none
     * @return empty if the frame is not there
     * @throws IllegalArgumentException if the draft makes no sense; the sentence says where
     */
    public Optional<byte[]> picture(long stack, String frame, SettingsDraft draft, long run) throws IOException {
        Recipe recipe = Recipe.parse(draft.over(reruns.settings(run).orElseGet(json::createObjectNode))
                .toString());
        return pictures.toned(stack, frame, recipe.tone(), recipe.finish());
    }
}
