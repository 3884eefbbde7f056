package org.stook.imaging.codec;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.IccProfile;

/** All of a written TIFF that comes before its pixels: header, directory, Exif directory, values. */
final class TiffHead {
    private static final int RESOLUTION_DENOMINATOR = 1000;
    private static final int STRIP_OFFSETS = 273;
    private static final int EXIF_IFD = 34665;

    private TiffHead() {}

    static byte[] of(Area area, int channels, int rowsPerStrip, TiffTags tags) {
        int strips = (area.height() + rowsPerStrip - 1) / rowsPerStrip;
        long rowBytes = (long) area.width() * channels * tags.bitsPerSample() / 8;
        List<TiffField> fields = fields(area, channels, tags);
        fields.add(TiffField.longs(278, rowsPerStrip));
        long[] sizes = new long[strips];
        for (int i = 0; i < strips; i++) {
            sizes[i] = rowBytes * Math.min(rowsPerStrip, area.height() - i * rowsPerStrip);
        }
        fields.add(TiffField.longs(279, sizes));
        List<TiffField> exif = OriginFields.exif(tags.origin());
        // Offsets have a fixed size: place the values first with blanks, then again with what came out.
        fields.add(TiffField.longs(STRIP_OFFSETS, new long[strips]));
        fields.add(TiffField.longs(EXIF_IFD, 0));
        fields.sort(Comparator.comparingInt(TiffField::tag));
        int exifAt = 8 + TiffField.directorySize(fields);
        int pixelsAt = exifAt + TiffField.directorySize(exif);
        fields.replaceAll(field -> switch (field.tag()) {
            case STRIP_OFFSETS -> TiffField.longs(STRIP_OFFSETS, offsets(pixelsAt, sizes));
            case EXIF_IFD -> TiffField.longs(EXIF_IFD, exifAt);
            default -> field;
        });
        ByteBuffer head = ByteBuffer.allocate(pixelsAt).order(ByteOrder.LITTLE_ENDIAN);
        head.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
        TiffField.put(fields, head);
        TiffField.put(exif, head);
        return head.array();
    }

    private static List<TiffField> fields(Area area, int channels, TiffTags tags) {
        List<TiffField> fields = new ArrayList<>(OriginFields.main(tags.origin()));
        fields.add(TiffField.longs(254, 0)); // a full picture
        fields.add(TiffField.longs(256, area.width()));
        fields.add(TiffField.longs(257, area.height()));
        int[] bits = new int[channels];
        Arrays.fill(bits, tags.bitsPerSample());
        fields.add(TiffField.shorts(258, bits));
        fields.add(TiffField.shorts(259, 1)); // uncompressed
        fields.add(TiffField.shorts(262, channels == 3 ? 2 : 1)); // RGB, or grey with black as zero
        fields.add(TiffField.shorts(274, 1)); // upright
        fields.add(TiffField.shorts(277, channels));
        fields.add(TiffField.shorts(284, 1)); // interleaved
        fields.addAll(resolution(tags.pixelsPerInch()));
        fields.add(TiffField.bytes(700, XmpPacket.of(tags.origin(), "image/tiff")));
        tags.profile().map(IccProfile::bytes).ifPresent(icc -> fields.add(TiffField.undefined(34675, icc)));
        return fields;
    }

    /** X and Y resolution, pixels an inch. */
    static List<TiffField> resolution(double pixelsPerInch) {
        long thousandths = Math.round(pixelsPerInch * RESOLUTION_DENOMINATOR);
        return List.of(
                TiffField.rational(282, thousandths, RESOLUTION_DENOMINATOR),
                TiffField.rational(283, thousandths, RESOLUTION_DENOMINATOR),
                TiffField.shorts(296, 2));
    }

    private static long[] offsets(long first, long[] sizes) {
        long[] offsets = new long[sizes.length];
        long at = first;
        for (int i = 0; i < sizes.length; i++) {
            offsets[i] = at;
            at += sizes[i];
        }
        if (at > 0xFFFFFFFFL) {
            throw new IllegalArgumentException("a classic TIFF ends at 4 GiB, this one would have " + at + " bytes");
        }
        return offsets;
    }
}
