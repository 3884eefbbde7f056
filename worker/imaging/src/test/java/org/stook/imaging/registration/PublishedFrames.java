package org.stook.imaging.registration;

import java.awt.geom.AffineTransform;
import java.awt.image.AffineTransformOp;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;
import org.stook.imaging.frame.LumaSource;
import org.stook.imaging.frame.Plane;

/** Real frames that others published. */
final class PublishedFrames implements LumaSource {
    private final List<BufferedImage> images;

    private PublishedFrames(List<BufferedImage> images) {
        this.images = images;
    }

    static PublishedFrames of(String set, List<String> files) throws IOException {
        Path folder = Path.of(System.getProperty("stook.published-data", "published-data-not-set"), set);
        if (!Files.isDirectory(folder)) {
            String loud = "PUBLISHED DATA ABSENT: " + folder + " does not exist; this check did not run";
            System.err.println(loud);
            Assumptions.abort(loud);
        }
        List<BufferedImage> images = new ArrayList<>();
        for (String file : files) images.add(ImageIO.read(folder.resolve(file).toFile()));
        return new PublishedFrames(images);
    }

    /** One of the frames, and it again as Java2D's own bicubic resampling places it: a pixel p comes to lie at map(p). */
    PublishedFrames withItself(int frame, AffineTransform map) {
        BufferedImage image = images.get(frame);
        AffineTransformOp op = new AffineTransformOp(map, AffineTransformOp.TYPE_BICUBIC);
        BufferedImage warped = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_3BYTE_BGR);
        BufferedImage plain = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_3BYTE_BGR);
        plain.getGraphics().drawImage(image, 0, 0, null);
        op.filter(plain, warped);
        return new PublishedFrames(List.of(plain, warped));
    }

    @Override
    public int frames() {
        return images.size();
    }

    @Override
    public int width() {
        return images.get(0).getWidth();
    }

    @Override
    public int height() {
        return images.get(0).getHeight();
    }

    @Override
    public Plane read(int frame, int reduction) {
        BufferedImage image = images.get(frame);
        Plane plane = new Plane(image.getWidth() / reduction, image.getHeight() / reduction);
        for (int y = 0; y < plane.height() * reduction; y++) {
            for (int x = 0; x < plane.width() * reduction; x++) {
                int rgb = image.getRGB(x, y);
                float luma = ((rgb >> 16 & 255) + 2 * (rgb >> 8 & 255) + (rgb & 255)) / 1020f;
                int i = y / reduction * plane.width() + x / reduction;
                plane.samples()[i] += luma / (reduction * reduction);
            }
        }
        return plane;
    }
}
