/** What is heard by somebody who looks at the switch. */
@NullMarked
package mainsgap.desk.sound;

import org.jspecify.annotations.NullMarked;
