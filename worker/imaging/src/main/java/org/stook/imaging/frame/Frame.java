package org.stook.imaging.frame;

import java.util.List;

/**
 * A frame as the stages see it: one (monochrome) or three (red, green, blue) planes of one size, encoded values of the
 * working profile, nominally 0 to 1. Values a little outside that range are legal between stages; only the encoder clips.
 */
public record Frame(List<Plane> planes) {
    public Frame {
        planes = List.copyOf(planes);
        if (planes.size() != 1 && planes.size() != 3) {
            throw new IllegalArgumentException("a frame has 1 or 3 planes, got " + planes.size());
        }
        for (Plane plane : planes) {
            if (!plane.sameSizeAs(planes.get(0))) {
                throw new IllegalArgumentException("all planes of a frame must have one size");
            }
        }
    }

    /** A black frame. */
    public static Frame blank(int width, int height, int channels) {
        return new Frame(java.util.stream.Stream.generate(() -> new Plane(width, height))
                .limit(channels)
                .toList());
    }

    public int width() {
        return planes.get(0).width();
    }

    public int height() {
        return planes.get(0).height();
    }

    public int channels() {
        return planes.size();
    }

    public Plane plane(int channel) {
        return planes.get(channel);
    }

    /** {@link Luma Luminance} of encoded values; of a grey frame the plane itself. */
    public Plane luma() {
        if (channels() == 1) return plane(0);
        Plane out = new Plane(width(), height());
        Luma.mix(plane(0).samples(), plane(1).samples(), plane(2).samples(), out.width() * out.height(), out.samples());
        return out;
    }
}
