/**
 * The desk's commands. They read options, ask for the passphrase, call the features and say what
 * came of it: results on standard output, messages on standard error, documented exit codes.
 *
 * <p>No decision about courses, licenses or keys is made here.
 */
@NullMarked
package org.lehrcase.desk.cli;

import org.jspecify.annotations.NullMarked;
