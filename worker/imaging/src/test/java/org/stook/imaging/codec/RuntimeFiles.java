package org.stook.imaging.codec;

import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.nio.ByteOrder;
import java.util.function.Consumer;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.stook.imaging.frame.Samples;
import org.w3c.dom.Element;

/** Files written by the Java runtime's own plug-ins: a view from outside of what our readers should read. */
final class RuntimeFiles {
    private RuntimeFiles() {}

    static BufferedImage image(Samples samples) {
        boolean colour = samples.channels() == 3;
        int type = samples.bitsPerSample() == 8 ? DataBuffer.TYPE_BYTE : DataBuffer.TYPE_USHORT;
        WritableRaster raster =
                Raster.createInterleavedRaster(type, samples.width(), samples.height(), samples.channels(), null);
        raster.setPixels(0, 0, samples.width(), samples.height(), TestPicture.codes(samples));
        ColorSpace space = ColorSpace.getInstance(colour ? ColorSpace.CS_sRGB : ColorSpace.CS_GRAY);
        return new BufferedImage(new ComponentColorModel(space, false, false, 1, type), raster, false, null);
    }

    static byte[] tiff(Samples samples, String compression, ByteOrder order, boolean tiled) throws Exception {
        return write("tiff", image(samples), order, param -> {
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionType(compression);
            if (tiled) {
                param.setTilingMode(ImageWriteParam.MODE_EXPLICIT);
                param.setTiling(32, 16, 0, 0);
            }
        });
    }

    /** @param lumaColumns horizontal chroma subsampling, 1 or 2; {@code lumaRows} vertical */
    static byte[] jpeg(Samples samples, int lumaColumns, int lumaRows, boolean progressive) throws Exception {
        return write(
                "jpeg",
                image(samples),
                ByteOrder.BIG_ENDIAN,
                param -> {
                    param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
                    param.setCompressionQuality(0.95f);
                    if (progressive) param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
                },
                lumaColumns,
                lumaRows);
    }

    private static byte[] write(
            String format, BufferedImage image, ByteOrder order, Consumer<ImageWriteParam> settings, int... sampling)
            throws Exception {
        ImageWriter writer = ImageIO.getImageWritersByFormatName(format).next();
        ImageWriteParam param = writer.getDefaultWriteParam();
        settings.accept(param);
        IIOMetadata metadata = writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), param);
        if (sampling.length == 2 && image.getRaster().getNumBands() == 3) {
            String tree = metadata.getNativeMetadataFormatName();
            Element root = (Element) metadata.getAsTree(tree);
            Element luma = (Element) root.getElementsByTagName("componentSpec").item(0);
            luma.setAttribute("HsamplingFactor", String.valueOf(sampling[0]));
            luma.setAttribute("VsamplingFactor", String.valueOf(sampling[1]));
            metadata.setFromTree(tree, root);
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(bytes)) {
            stream.setByteOrder(order);
            writer.setOutput(stream);
            writer.write(null, new IIOImage(image, null, metadata), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
