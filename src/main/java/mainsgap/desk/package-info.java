/** The window: what a person sees whose hands are on the mains switch. */
@NullMarked
package mainsgap.desk;

import org.jspecify.annotations.NullMarked;
