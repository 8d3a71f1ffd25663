/** Oscilloscopes: instrument profiles, the capture plan, and preambles turned into captures. */
@NullMarked
package mainsgap.scope;

import org.jspecify.annotations.NullMarked;
