package org.stook.scenes.file;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.ExifParentTIFFTagSet;
import javax.imageio.plugins.tiff.ExifTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.plugins.tiff.TIFFTag;
import javax.imageio.plugins.tiff.TIFFTagSet;
import javax.imageio.stream.ImageOutputStream;
import org.stook.scenes.bracket.Picture;
import org.w3c.dom.Element;

/** Writes encoded pictures as a camera would. */
public final class FrameWriter {
    private static final float QUALITY = 0.95f;
    private static final int ICC = 34675;

    private FrameWriter() {}

    /** Writes an encoded picture to a file; an existing file is replaced. */
    public static void write(Picture encoded, FrameFormat format, Capture capture, Path file) throws IOException {
        Files.write(file, bytes(encoded, format, capture));
    }

    /** The bytes of such a file. */
    public static byte[] bytes(Picture encoded, FrameFormat format, Capture capture) {
        Exif exif = Exif.of(capture);
        if (format.isRaw()) return Dng.bytes(encoded, format, exif);
        try {
            BufferedImage image = Images.of(encoded, format.bits());
            return format.isTiff() ? tiff(image, exif) : jpeg(image, exif, format == FrameFormat.JPEG);
        } catch (IOException e) {
            throw new UncheckedIOException("memory refused to be written", e);
        }
    }

    private static byte[] jpeg(BufferedImage image, Exif exif, boolean fullColour) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam param = writer.getDefaultWriteParam();
        param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        param.setCompressionQuality(QUALITY);
        IIOMetadata metadata = writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), param);
        if (fullColour) setFullColour(metadata);
        byte[] plain = encode(writer, image, metadata, param);
        byte[] segment = exif.segment();
        ByteArrayOutputStream out = new ByteArrayOutputStream(plain.length + segment.length);
        out.write(plain, 0, 2);
        out.writeBytes(segment);
        out.write(plain, 2, plain.length - 2);
        return out.toByteArray();
    }

    private static void setFullColour(IIOMetadata metadata) throws IOException {
        String tree = metadata.getNativeMetadataFormatName();
        Element root = (Element) metadata.getAsTree(tree);
        Element luma = (Element) root.getElementsByTagName("componentSpec").item(0);
        luma.setAttribute("HsamplingFactor", "1");
        luma.setAttribute("VsamplingFactor", "1");
        metadata.setFromTree(tree, root);
    }

    private static byte[] tiff(BufferedImage image, Exif exif) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
        ImageWriteParam param = writer.getDefaultWriteParam();
        IIOMetadata plain = writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), param);
        TIFFDirectory directory = TIFFDirectory.createFromMetadata(plain);
        for (Exif.Tag tag : exif.image()) directory.addTIFFField(field(tag, BaselineTIFFTagSet.getInstance()));
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        TIFFTag icc = new TIFFTag("ICC Profile", ICC, 1 << Exif.UNDEFINED);
        directory.addTIFFField(new TIFFField(icc, Exif.UNDEFINED, profile.length, profile));
        directory.addTIFFField(shot(exif.shot()));
        return encode(writer, image, directory.getAsMetadata(), param);
    }

    private static TIFFField shot(List<Exif.Tag> tags) {
        TIFFTag pointer = ExifParentTIFFTagSet.getInstance().getTag(Exif.EXIF_POINTER);
        TIFFDirectory directory = new TIFFDirectory(new TIFFTagSet[] {ExifTIFFTagSet.getInstance()}, pointer);
        for (Exif.Tag tag : tags) directory.addTIFFField(field(tag, ExifTIFFTagSet.getInstance()));
        return new TIFFField(pointer, TIFFTag.TIFF_LONG, 1L, directory);
    }

    private static TIFFField field(Exif.Tag tag, TIFFTagSet known) {
        TIFFTag name = known.getTag(tag.number());
        if (name == null) name = new TIFFTag("Tag" + tag.number(), tag.number(), 1 << tag.type());
        Object value = switch (tag.type()) {
            case Exif.ASCII -> new String[] {tag.text()};
            case Exif.UNDEFINED -> tag.bytes();
            case Exif.SHORT -> new char[] {(char) tag.numbers().get(0).intValue()};
            default ->
                new long[][] {tag.numbers().stream().mapToLong(Long::longValue).toArray()};
        };
        int count = tag.type() == Exif.UNDEFINED ? tag.count() : 1;
        return new TIFFField(name, tag.type(), count, value);
    }

    private static byte[] encode(ImageWriter writer, BufferedImage image, IIOMetadata metadata, ImageWriteParam param)
            throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, metadata), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
