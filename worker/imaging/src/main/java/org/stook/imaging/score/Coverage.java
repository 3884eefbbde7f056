package org.stook.imaging.score;

/**
 * How the composite's sharpness compares with the frames'.
 *
 * @param textured tiles with texture enough to judge
 * @param sharp those in which the composite keeps at least 0.9 of the sharpest frame's detail
 */
public record Coverage(int textured, int sharp) {
    /** Textured tiles that stay behind, per cent; 0 if nothing is textured. */
    public double softPercent() {
        return textured == 0 ? 0 : 100.0 * (textured - sharp) / textured;
    }
}
