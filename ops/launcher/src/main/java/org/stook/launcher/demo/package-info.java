/** A day at an invented cabinet: three pieces are shot, things go wrong as they do, and the composites come out. */
@NullMarked
package org.stook.launcher.demo;

import org.jspecify.annotations.NullMarked;
