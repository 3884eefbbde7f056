/**
 * Camera raw: the counts of a sensor behind a colour filter array, and pictures made of them.
 *
 * <p>Files are unpacked by the shared library LibRaw, which knows the formats of many hundred cameras; on Debian it is the package
 * libraw20. It is optional: where it is absent, raw frames are refused with a sentence that says what to install. The library reads
 * whatever lies in the share and is written in C++, so it never runs in a process of ours that has anything to lose:
 * {@link org.stook.imaging.codec.raw.RawFiles} starts a Java process of a few megabytes for each file
 * ({@link org.stook.imaging.codec.raw.Unpacker}), with a limit of time and memory. If that crashes or hangs, one frame is lost and the
 * reason is said.
 *
 * <p>Only unpacking, black levels, white balance as shot and the camera's colour matrix are taken from the library. The picture is
 * made of them by {@link org.stook.imaging.codec.raw.Development}, by fixed rules, so that its bytes are the same with every version
 * of the library.
 */
@NullMarked
package org.stook.imaging.codec.raw;

import org.jspecify.annotations.NullMarked;
