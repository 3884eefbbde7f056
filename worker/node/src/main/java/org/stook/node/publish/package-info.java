/**
 * From a file on this machine to an official composite on a share: stage, read back, pass the fence, rename. Nothing here
 * composes.
 */
@NullMarked
package org.stook.node.publish;

import org.jspecify.annotations.NullMarked;
