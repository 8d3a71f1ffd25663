/**
 * What published curves and levels of voltage tolerance say of an interruption. The figures stand
 * in data files, each with its source and its status.
 */
@NullMarked
package mainsgap.transfer.tolerance;

import org.jspecify.annotations.NullMarked;
