package org.stook.scenes.subject;

/** What a sheet shows at one point. Reused from point to point, since millions are asked a second. */
public final class Hit {
    /** 0 nearest to 1 farthest point of the subject; also given where nothing is covered (the surface continued). */
    public double depth;
    /** Share of the pixel that the sheet covers, 0 to 1. */
    public double cover;
    /** Linear light, 1 is sensor saturation at nominal exposure. Meaningless where cover is 0. */
    public double red;

    public double green;
    public double blue;

    /** Sets the depth and marks the point as not covered. */
    public void miss(double atDepth) {
        depth = atDepth;
        cover = 0;
    }

    /** Lays this share of a tint over the colour. */
    void mix(Tint tint, double share) {
        red = Edges.mix(red, tint.red(), share);
        green = Edges.mix(green, tint.green(), share);
        blue = Edges.mix(blue, tint.blue(), share);
    }

    /** Sets the colour: the tint times the light. */
    public void colour(Tint tint, double light) {
        red = tint.red() * light;
        green = tint.green() * light;
        blue = tint.blue() * light;
    }
}
