package org.stook.imaging.codec.raw;

import com.sun.jna.Callback;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Pointer;

/**
 * The part of LibRaw's C interface that is used (libraw.h, 0.20). Nothing is read from its structures but their first member, the
 * picture of four colours a pixel, as the rest moves from version to version.
 */
@SuppressWarnings({"checkstyle:MethodName", "MethodName"}) // the library's own names
interface LibRaw extends Library {
    /** Bytes a pixel of the picture in memory: four colours of 16 bit, one of them filled. */
    int PIXEL = 8;

    /** Called where the data of a file end early ({@code offset} negative) or contradict themselves. */
    interface DataError extends Callback {
        void at(Pointer data, Pointer file, int offset);
    }

    /** @throws UnsatisfiedLinkError if it is not on this machine */
    static LibRaw load() {
        try {
            return Native.load(
                    "raw_r", LibRaw.class); // the same, for several threads; the only one that some systems have
        } catch (UnsatisfiedLinkError absent) {
            return Native.load("raw", LibRaw.class);
        }
    }

    Pointer libraw_init(int flags);

    int libraw_open_file(Pointer raw, String path);

    int libraw_unpack(Pointer raw);

    int libraw_raw2image(Pointer raw);

    int libraw_subtract_black(Pointer raw);

    void libraw_set_dataerror_handler(Pointer raw, DataError handler, Pointer data);

    String libraw_strerror(int error);

    int libraw_get_iwidth(Pointer raw);

    int libraw_get_iheight(Pointer raw);

    int libraw_get_color_maximum(Pointer raw);

    float libraw_get_cam_mul(Pointer raw, int colour);

    float libraw_get_pre_mul(Pointer raw, int colour);

    float libraw_get_rgb_cam(Pointer raw, int primary, int colour);

    /** 0 red, 1 and 3 green, 2 blue; 6 where there is no filter. */
    int libraw_COLOR(Pointer raw, int row, int column);
}
