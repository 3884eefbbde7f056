package org.stook.app.review;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;
import tools.jackson.databind.JsonNode;

/**
 * What a worker recorded of a published run, as far as a review shows it.
 *
 * @param reference file name of the reference frame
 * @param area that the composite shows, reference pixels
 * @param border pixels of the reference frame that it leaves out
 * @param model of the placements
 * @param frames blended ones first, in sweep order; their index there is their rank
 * @param focus sharpness of each frame; empty for a record of an earlier version
 * @param settings all of them spelled out
 */
public record RunRecord(
        String reference,
        Area area,
        Border border,
        String model,
        List<Frame> frames,
        Optional<Focus> focus,
        JsonNode settings) {

    /** @param percent of the reference frame's area */
    public record Border(int left, int top, int right, int bottom, double percent) {}

    /** @param role reference, blended, outside-span or stray */
    public record Frame(
            String file,
            String sha256,
            String role,
            String reason,
            @Nullable Placement placement,
            double exposureEv) {
        public boolean isBlended() {
            return role.equals("reference") || role.equals("blended");
        }

        public boolean isReference() {
            return role.equals("reference");
        }
    }

    /** See the report's schema. */
    public record Focus(
            int columns, int rows, double openFirst, double openLast, List<Gap> gaps, List<FocusFrame> frames) {}

    /** @param missing about how many frames */
    public record Gap(String before, String after, double missing) {}

    /** @param sharpness of each cell, per cent of the sharpest frame there, -1 without texture */
    public record FocusFrame(String file, double position, double sharpestPercent, List<Integer> sharpness) {}

    public RunRecord {
        frames = List.copyOf(frames);
    }

    /** The frames that the composite was made of, in sweep order. */
    public List<Frame> blended() {
        return frames.stream().filter(Frame::isBlended).toList();
    }

    public List<Frame> strays() {
        return frames.stream().filter(f -> f.role().equals("stray")).toList();
    }

    /** Columns of the whole reference frame. */
    public int frameWidth() {
        return border.left() + area.width() + border.right();
    }

    public int frameHeight() {
        return border.top() + area.height() + border.bottom();
    }

    Optional<FocusFrame> focusOf(String file) {
        return focus.flatMap(
                f -> f.frames().stream().filter(row -> row.file().equals(file)).findFirst());
    }
}
