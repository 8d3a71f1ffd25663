/** The command line: text, JSON and exit codes. */
@NullMarked
package mainsgap.cli;

import org.jspecify.annotations.NullMarked;
