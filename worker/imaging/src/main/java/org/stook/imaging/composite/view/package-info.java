/**
 * What is made for looking at: tiles of the composite for deep zoom, small copies of the placed frames, and reduced maps.
 * All of it can be made again from the frames; nothing of it decides anything.
 */
@NullMarked
package org.stook.imaging.composite.view;

import org.jspecify.annotations.NullMarked;
