/**
 * What people see and press: the pages, the same as JSON under {@code /api}, and what keeps other sites' pages out.
 */
@NullMarked
package org.stook.app.desk;

import org.jspecify.annotations.NullMarked;
