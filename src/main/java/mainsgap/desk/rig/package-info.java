/** The page of the rig: what is connected to what, is it safe, and is it right. */
@NullMarked
package mainsgap.desk.rig;

import org.jspecify.annotations.NullMarked;
