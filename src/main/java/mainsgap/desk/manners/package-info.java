/** How the window behaves: it never freezes, and is as it was left. */
@NullMarked
package mainsgap.desk.manners;

import org.jspecify.annotations.NullMarked;
