/** What tests of the service share. */
package org.stook.app.testing;
