/**
 * Files to samples and frames to files: reads JPEG, TIFF and camera raw frames, writes the 16-bit TIFF master and the JPEG preview.
 *
 * <p>A file is known by its bytes, never by its name. Code values stay what they are (16 bit stay 16 bit); tones are
 * made elsewhere. What cannot be read is an {@link org.stook.imaging.codec.UnreadableFrame} that names the file, what was
 * found and what was expected; {@link java.io.IOException} is left for the disk or the share failing.
 *
 * <p>The same bytes decode to the same samples on every Java runtime, with one exception: a JPEG whose chroma is
 * subsampled vertically only (4:4:0, written by some lossless rotators, not by cameras) is enlarged differently by
 * libjpeg 6b and by libjpeg-turbo, and runtimes ship one or the other.
 *
 * <h2>How to add one</h2>
 *
 * A new frame format is one class, one line and one test:
 *
 * <ol>
 *   <li>implement {@link org.stook.imaging.codec.FrameReader}: {@code recognises} looks at the first bytes only;
 *       {@code header} refuses what is incomplete and what the file is too short for, before anything is allocated;
 *   <li>add it to the list in {@link org.stook.imaging.codec.FrameReaders}; the first that recognises a file reads it;
 *   <li>extend {@code FrameReaderContract} in the tests and hand it sample files of the format: it checks recognition
 *       under a wrong name, truncation at many places, flipped bits, zero bytes, text and repeatability.
 * </ol>
 */
@NullMarked
package org.stook.imaging.codec;

import org.jspecify.annotations.NullMarked;
