package org.stook.scenes.bracket;

import java.util.List;
import java.util.stream.IntStream;
import org.stook.scenes.optics.Spread;
import org.stook.scenes.subject.Hit;
import org.stook.scenes.subject.Sheet;

/**
 * Draws a view tile by tile: every sheet, from back to front, is sampled with as much surround as its blur reaches,
 * spread by the lens and laid over what lies behind. Tiles do not share anything, so threads change nothing.
 */
final class Renderer {
    private static final int TILE = 256;

    private final List<Sheet> sheets;
    private final View view;
    private final Picture picture;

    Renderer(List<Sheet> sheets, View view, Picture picture) {
        this.sheets = sheets;
        this.view = view;
        this.picture = picture;
    }

    /** Fills the picture with linear light. */
    void render() {
        int across = (picture.width() + TILE - 1) / TILE;
        int down = (picture.height() + TILE - 1) / TILE;
        Box all = new Box(0, 0, picture.width(), picture.height());
        IntStream.range(0, across * down).parallel().forEach(k -> {
            int left = k % across * TILE;
            int top = k / across * TILE;
            tile(new Box(left, top, left + TILE, top + TILE).within(all));
        });
    }

    private void tile(Box tile) {
        float[] rgb = new float[3 * tile.width() * tile.height()];
        for (Sheet sheet : sheets) {
            int reach = (int) Math.ceil(view.greatestBlur(sheet.extent())) + 1;
            Box sampled = tile.grown(reach).within(view.box(sheet.extent()).grown(reach));
            if (sampled.isEmpty()) continue;
            Sampled points = new Sampled(sheet, sampled);
            if (!points.covered) continue;
            Spread spread = new Spread(tile.width(), tile.height(), reach);
            points.leaveOutFarFromCover(2 * reach);
            points.spreadInto(spread, tile);
            spread.over(rgb);
        }
        store(tile, rgb);
    }

    private void store(Box tile, float[] rgb) {
        for (int y = 0; y < tile.height(); y++) {
            int to = (tile.top() + y) * picture.width() + tile.left();
            int from = 3 * y * tile.width();
            for (int x = 0; x < tile.width(); x++) {
                for (int c = 0; c < 3; c++) picture.planes()[c][to + x] = rgb[from + 3 * x + c];
            }
        }
    }

    /** One sheet's points in a box: blur radius and light. */
    private final class Sampled {
        final Box box;
        final float[] radius;
        final float[] light;
        boolean covered;

        Sampled(Sheet sheet, Box box) {
            this.box = box;
            radius = new float[box.width() * box.height()];
            light = new float[Spread.CHANNELS * radius.length];
            Hit hit = new Hit();
            int p = 0;
            for (int y = box.top(); y < box.bottom(); y++) {
                for (int x = box.left(); x < box.right(); x++) {
                    sheet.sample(view.subjectX(x, y), view.subjectY(x, y), hit);
                    keep(p++, hit);
                }
            }
        }

        private void keep(int p, Hit hit) {
            radius[p] = (float) view.blurRadius(hit.depth);
            int at = p * Spread.CHANNELS;
            light[at] = 1;
            if (hit.cover <= 0) return;
            covered = true;
            light[at + 1] = (float) hit.cover;
            light[at + 2] = (float) (hit.cover * hit.red);
            light[at + 3] = (float) (hit.cover * hit.green);
            light[at + 4] = (float) (hit.cover * hit.blue);
        }

        /** Bare points matter only as the surround of covered ones. */
        void leaveOutFarFromCover(int distance) {
            boolean[] near = new boolean[radius.length];
            for (int p = 0; p < near.length; p++) near[p] = light[p * Spread.CHANNELS + 1] > 0;
            near = Masks.dilated(near, box.width(), distance);
            for (int p = 0; p < near.length; p++) {
                if (!near[p]) radius[p] = -1;
            }
        }

        void spreadInto(Spread spread, Box tile) {
            int x = box.left() - tile.left();
            for (int row = 0; row < box.height(); row++) {
                spread.addRow(x, box.top() - tile.top() + row, radius, light, row * box.width(), box.width());
            }
        }
    }
}
