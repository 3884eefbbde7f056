/**
 * From files on a share to frames of a stack: watches the stations' folders, and decides of each file whether it is whole,
 * readable and belongs. Files are only ever read. The only package here that knows the imaging library.
 */
@NullMarked
package org.stook.app.intake;

import org.jspecify.annotations.NullMarked;
