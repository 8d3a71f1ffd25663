/**
 * What feeds a load: the recording, the supplies that are fitted to it, how far it follows them,
 * and what is left of its voltage where none feeds it.
 */
@NullMarked
package mainsgap.transfer.supply;

import org.jspecify.annotations.NullMarked;
