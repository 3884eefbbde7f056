package org.stook.imaging.blend;

/** What a thread needs to mix tiles. */
final class TileBuffers {
    /** The frame as it is drawn, one picture a channel, luminance last. */
    final float[][][] drawn;
    /** The same, taken apart into phases. */
    final float[][][] full;
    /** Its channels at half size. */
    final float[][] half;

    final float[][] slope = new float[Phases.COUNT][Phases.SIZE];
    final float[][] claim = new float[Phases.COUNT][Phases.SIZE];
    final float[][] weight = new float[Phases.COUNT][Phases.SIZE];
    final float[][] enlarged = new float[Phases.COUNT][Phases.SIZE];
    final float[] small = new float[Phases.SIZE];
    final Phases.Space space = new Phases.Space();
    final float[] sum = new float[Phases.SIZE];
    final float[] line = new float[Phases.COLUMNS / 2 + 2];
    final float[] wide = new float[Phases.COLUMNS + 4];

    TileBuffers(int channels) {
        drawn = new float[channels + 1][Tile.HEIGHT + 2 * Tile.MARGIN][Tile.WIDTH + 2 * Tile.MARGIN];
        full = new float[channels + 1][Phases.COUNT][Phases.SIZE];
        half = new float[channels][Phases.SIZE];
    }

    float[][] luma() {
        return full[full.length - 1];
    }
}
