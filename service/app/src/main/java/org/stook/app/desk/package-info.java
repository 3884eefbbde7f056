/**
 * What people see and press: the pages, and the same as JSON under {@code /api}.
 */
@NullMarked
package org.stook.app.desk;

import org.jspecify.annotations.NullMarked;
