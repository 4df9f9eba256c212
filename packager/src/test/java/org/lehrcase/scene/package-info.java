/**
 * Scenes played from end to end with the two programs as they are shipped: child processes of the
 * jars, files in folders with German names, and a real browser.
 */
package org.lehrcase.scene;
