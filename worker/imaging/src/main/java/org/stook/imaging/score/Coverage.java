package org.stook.imaging.score;

/**
 * How the composite's sharpness compares with the frames'.
 *
 * @param textured tiles with texture enough to judge
 * @param sharp those in which the composite keeps at least 0.9 of the sharpest frame's detail
 * @param peaks for each frame, in sweep order, the textured tiles it shows sharpest
 */
public record Coverage(int textured, int sharp, int[] peaks) {
    /** Textured tiles that stay behind, per cent; 0 if nothing is textured. */
    public double softPercent() {
        return textured == 0 ? 0 : 100.0 * (textured - sharp) / textured;
    }

    /** Textured tiles sharpest in the first frame, per cent. */
    public double firstFramePercent() {
        return textured == 0 ? 0 : 100.0 * peaks[0] / textured;
    }

    /** Textured tiles sharpest in the last frame, per cent. */
    public double lastFramePercent() {
        return textured == 0 ? 0 : 100.0 * peaks[peaks.length - 1] / textured;
    }
}
