/**
 * The desk's page: what it asks, behind the guard of the bench's server. Puts the features of the
 * desk together; decides nothing about courses, licenses or keys itself.
 *
 * <p>The passphrase comes in as bytes, is never made a text, never logged, and never answered.
 */
@NullMarked
package org.lehrcase.desk.web;

import org.jspecify.annotations.NullMarked;
