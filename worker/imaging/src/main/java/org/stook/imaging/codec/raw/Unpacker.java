package org.stook.imaging.codec.raw;

import com.sun.jna.Pointer;
import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.stook.imaging.codec.raw.RawRefusal.Cause;

/**
 * The process that unpacks one raw file: reads it from its standard input, writes an {@link Answer} to its standard output and
 * ends. It never learns a file's name.
 */
final class Unpacker {
    private static final int OUTPUT = 1 << 16;
    private static final int SECOND_GREEN = 3;
    /** How far the pattern of the filters is looked at. */
    private static final int LOOKED_AT = 12;

    private final LibRaw library;
    private final Pointer raw;
    private final boolean[] broken = new boolean[1];
    /** Held on to for as long as the library may call it. */
    private final LibRaw.DataError onDamage = (data, file, offset) -> broken[0] = true;

    private Unpacker(LibRaw library, Pointer raw) {
        this.library = library;
        this.raw = raw;
        library.libraw_set_dataerror_handler(raw, onDamage, Pointer.NULL);
    }

    /** @param args how much of the file is asked for ({@link RawFiles.Depth}), and after how many milliseconds to give up */
    public static void main(String[] args) throws IOException {
        giveUpAfter(Long.parseLong(args[1]));
        try (DataOutputStream out =
                new DataOutputStream(new BufferedOutputStream(new FileOutputStream(FileDescriptor.out), OUTPUT))) {
            try {
                answer(RawFiles.Depth.valueOf(args[0]), out);
            } catch (RawRefusal refusal) {
                Answer.refusal(refusal, out);
            }
        }
        Runtime.getRuntime().halt(0); // what the library holds goes with the process
    }

    /** Also when whoever asked is gone. */
    private static void giveUpAfter(long millis) {
        Thread thread = new Thread(() -> {
            try {
                Thread.sleep(millis);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            Runtime.getRuntime().halt(1);
        });
        thread.setDaemon(true);
        thread.start();
    }

    private static void answer(RawFiles.Depth depth, DataOutputStream out) throws RawRefusal, IOException {
        LibRaw library;
        try {
            library = LibRaw.load();
        } catch (UnsatisfiedLinkError absent) {
            throw noLibrary();
        }
        new Unpacker(library, library.libraw_init(0)).unpack(depth, out);
    }

    static RawRefusal noLibrary() {
        return new RawRefusal(
                Cause.NO_LIBRARY,
                "camera raw, and no LibRaw on this machine to unpack it",
                "the shared library to be installed (on Debian: apt-get install libraw20), or a JPEG of the same name");
    }

    private void unpack(RawFiles.Depth depth, DataOutputStream out) throws RawRefusal, IOException {
        check(library.libraw_open_file(raw, "/dev/stdin"));
        int[] filters = filters();
        if (depth != RawFiles.Depth.SIZE) {
            check(library.libraw_unpack(raw));
            if (broken[0]) {
                throw new RawRefusal(
                        Cause.DAMAGED, "picture data that end early or contradict themselves", "whole data");
            }
            check(library.libraw_raw2image(raw));
            check(library.libraw_subtract_black(raw));
        }
        RawSize size = new RawSize(library.libraw_get_iwidth(raw), library.libraw_get_iheight(raw));
        Answer.size(size, out);
        if (depth == RawFiles.Depth.MOSAIC) {
            Answer.light(filters, light(), out);
            counts(size, filters, out);
        }
    }

    private void check(int error) throws RawRefusal {
        if (error != 0) {
            // -2 is LIBRAW_FILE_UNSUPPORTED; what is wrong with the data or with memory lies below (libraw_const.h).
            Cause cause = error == -2 ? Cause.UNSUPPORTED : Cause.DAMAGED;
            throw new RawRefusal(
                    cause,
                    "a raw file that LibRaw does not unpack (" + library.libraw_strerror(error) + ")",
                    "one of a camera that it knows");
        }
    }

    /** Two rows of two, repeated over the whole sensor, or it is none that we make pictures of. */
    private int[] filters() throws RawRefusal {
        int[] filters = new int[4];
        for (int y = 0; y < LOOKED_AT; y++) {
            for (int x = 0; x < LOOKED_AT; x++) {
                int found = library.libraw_COLOR(raw, y, x);
                int colour = found == SECOND_GREEN ? 1 : found;
                int place = 2 * (y & 1) + (x & 1);
                if (y < 2 && x < 2) filters[place] = colour;
                if (colour < 0 || colour > 2 || filters[place] != colour) throw otherSensor();
            }
        }
        boolean diagonal = filters[0] == 1 ? filters[3] == 1 : filters[1] == 1 && filters[2] == 1;
        int sum = filters[0] + filters[1] + filters[2] + filters[3];
        if (!diagonal || sum != 4) throw otherSensor();
        return filters;
    }

    private static RawRefusal otherSensor() {
        return new RawRefusal(
                Cause.UNSUPPORTED,
                "raw of a sensor without red, green and blue filters in rows of two",
                "such a sensor, or a JPEG of the same name");
    }

    private Mosaic.Light light() {
        float[] balance = new float[3];
        boolean asShot = true;
        for (int c = 0; c < 3; c++) {
            balance[c] = library.libraw_get_cam_mul(raw, c);
            asShot &= balance[c] > 0;
        }
        for (int c = 0; c < 3 && !asShot; c++) balance[c] = library.libraw_get_pre_mul(raw, c); // of daylight
        float least = Math.min(balance[0], Math.min(balance[1], balance[2]));
        for (int c = 0; c < 3; c++) balance[c] /= least;
        float[] matrix = new float[9];
        for (int i = 0; i < 9; i++) matrix[i] = library.libraw_get_rgb_cam(raw, i / 3, i % 3);
        return new Mosaic.Light(Math.max(1, library.libraw_get_color_maximum(raw)), balance, matrix);
    }

    private void counts(RawSize size, int[] filters, DataOutputStream out) throws IOException {
        Pointer picture = raw.getPointer(0);
        short[] row = new short[4 * size.width()];
        ByteBuffer counts = ByteBuffer.allocate(2 * size.width());
        for (int y = 0; y < size.height(); y++) {
            picture.read((long) y * size.width() * LibRaw.PIXEL, row, 0, row.length);
            for (int x = 0; x < size.width(); x++) {
                // Of the four colours of a pixel one was counted; the second green has the last place.
                int colour = filters[2 * (y & 1) + (x & 1)];
                int count = row[4 * x + colour] & 0xFFFF;
                if (colour == 1) count |= row[4 * x + SECOND_GREEN] & 0xFFFF;
                counts.putShort(2 * x, (short) count);
            }
            out.write(counts.array(), 0, counts.capacity());
        }
    }
}
