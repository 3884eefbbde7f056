package org.stook.app.desk;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.app.stack.Sealing;
import org.stook.app.testing.Everyone;
import org.stook.app.testing.Migrated;
import org.stook.app.testing.OneStation;

/** Makes the published run of the invented queue reviewable: four frames, tiles, maps, a record. */
final class Reviewable {
    static final int WIDTH = 300;
    static final int HEIGHT = 200;

    private Reviewable() {}

    /** The invented queue with everyone to look at it, its published run reviewable. @param folder of a {@link OneStation} */
    static void fill(JdbcClient jdbc, Sealing sealing, Path folder) throws IOException {
        Demo.fill(jdbc, sealing);
        Everyone.fill(jdbc);
        write(jdbc, folder.resolve("north/Banded agate"), folder.resolve("published/agate"));
    }

    /** @param originals where the station's frames lie, @param published folder of the composite's files */
    private static void write(JdbcClient jdbc, Path originals, Path published) throws IOException {
        String files = "[{\"name\": \"agate/1.preview.jpg\", \"kind\": \"preview\"},"
                + " {\"name\": \"agate/1.json\", \"kind\": \"record\"},"
                + " {\"name\": \"agate/1.tiles/info.json\", \"kind\": \"tiles\"},"
                + " {\"name\": \"agate/1.review/review.json\", \"kind\": \"review\"}]";
        JdbcClient owner = Migrated.owner(jdbc);
        owner.sql("alter table stook.publication disable trigger append_only").update();
        owner.sql("update stook.publication set files = cast(? as jsonb) where run_id = 1")
                .param(files)
                .update();
        owner.sql("alter table stook.publication enable trigger append_only").update();
        Path review = published.resolve("1.review");
        write(published.resolve("1.tiles/full/300,200/0/default.jpg"), picture(3));
        write(published.resolve("1.preview.jpg"), picture(3));
        write(published.resolve("1.tiles/0,0,300,200/300,200/0/default.jpg"), picture(3));
        Files.writeString(published.resolve("1.tiles/info.json"), "{}");
        Files.createDirectories(review);
        Files.writeString(review.resolve("review.json"), "{}");
        for (int rank = 0; rank < 4; rank++) {
            write(review.resolve(String.format(Locale.ROOT, "frames/%03d.jpg", rank)), picture(rank));
            write(review.resolve(String.format(Locale.ROOT, "thumbnails/%03d.jpg", rank)), picture(rank));
            write(originals.resolve(rank + ".tif"), picture(rank, WIDTH + 40, HEIGHT + 40));
        }
        maps(review);
        Files.writeString(published.resolve("1.json"), record());
    }

    /** Left half from the second frame at depth 1.25, right half from the third; the lowest row from it by hand. */
    private static void maps(Path review) throws IOException {
        BufferedImage source = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_USHORT_GRAY);
        BufferedImage depth = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_USHORT_GRAY);
        BufferedImage doubt = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                source.getRaster().setSample(x, y, 0, x < WIDTH / 2 ? 1 : 2);
                depth.getRaster().setSample(x, y, 0, x < WIDTH / 2 ? 320 : 65535);
                doubt.getRaster().setSample(x, y, 0, y == HEIGHT - 1 ? 8 : 0);
            }
        }
        ImageIO.write(source, "png", review.resolve("source.png").toFile());
        ImageIO.write(depth, "png", review.resolve("depth.png").toFile());
        ImageIO.write(doubt, "png", review.resolve("doubt.png").toFile());
    }

    private static String record() {
        StringBuilder frames = new StringBuilder();
        StringBuilder focus = new StringBuilder();
        for (int rank = 0; rank < 4; rank++) {
            frames.append(frames.isEmpty() ? "" : ",")
                    .append("""
                    {"file": "%d.tif", "sha256": "%s", "role": "%s", "reason": "", "placement": [1, 0, %d, 0, 1, 0, 0, 0, 1], "exposureEv": 0}
                    """.formatted(rank, "ab".repeat(32), rank == 1 ? "reference" : "blended", rank));
            focus.append(focus.isEmpty() ? "" : ",").append("""
                    {"file": "%d.tif", "position": %d, "sharpestPercent": 25, "sharpness": [%d, 100]}
                    """.formatted(rank, rank, 100 - 10 * rank));
        }
        return """
                {"reference": "1.tif", "commonArea": {"x": 20, "y": 20, "width": 300, "height": 200},
                 "lostBorder": {"left": 20, "top": 20, "right": 20, "bottom": 20, "percent": 26.5}, "model": "similarity",
                 "frames": [%s, {"file": "7.tif", "sha256": "", "role": "stray", "reason": "7.tif: is black", "placement": null, "exposureEv": 0}],
                 "focus": {"columns": 2, "rows": 1, "openFirstPercent": 0, "openLastPercent": 9, "gaps": [], "frames": [%s]},
                 "settings": {"blend": "region"}}""".formatted(frames, focus);
    }

    private static BufferedImage picture(int rank) {
        return picture(rank, WIDTH, HEIGHT);
    }

    private static BufferedImage picture(int rank, int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(new Color(60 * rank, 120, 200));
        graphics.fillRect(0, 0, width, height);
        graphics.dispose();
        return image;
    }

    private static void write(Path file, BufferedImage image) throws IOException {
        Files.createDirectories(file.getParent());
        ImageIO.write(image, "jpeg", file.toFile());
    }
}
