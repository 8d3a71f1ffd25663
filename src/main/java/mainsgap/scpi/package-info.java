/** IEEE 488.2 and SCPI-1999 over any link: messages, blocks, status, the error queue. */
@NullMarked
package mainsgap.scpi;

import org.jspecify.annotations.NullMarked;
