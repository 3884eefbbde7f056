/** What a lens and a sensor do to light: blur by defocus, breathing, noise, encoding. Lengths in millimetres or pixels as said. */
@NullMarked
package org.stook.scenes.optics;

import org.jspecify.annotations.NullMarked;
