/**
 * Frames as files: JPEG, TIFF and raw (DNG) with Exif, what can go wrong with them, and how a camera drops them in a folder.
 */
@NullMarked
package org.stook.scenes.file;

import org.jspecify.annotations.NullMarked;
